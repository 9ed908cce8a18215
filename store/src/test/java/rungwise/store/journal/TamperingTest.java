package rungwise.store.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rungwise.store.schema.Tables.DOSE_SIGNED_OVERRIDE;
import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.JOURNAL_HEAD;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.Field;
import org.jooq.Table;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.people.SignInAttempt;
import rungwise.store.RawDatabase;
import rungwise.store.SampleCourse;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;

/** What somebody who can write the database, but not read the key, cannot do unseen. */
final class TamperingTest {

  private static final long ENTRIES = 5;
  private static final int LONGEST_TIME = "2026-03-02 09:00:00.123+00:00".length();

  @TempDir Path folder;
  private SqliteStore store;
  private RawDatabase raw;

  @BeforeEach
  void open() throws SQLException {
    store = SqliteStore.open(folder);
    SampleEntries.append(store);
    raw = RawDatabase.withoutTriggers(folder);
  }

  @AfterEach
  void close() throws SQLException {
    raw.close();
    store.close();
  }

  private Optional<BrokenEntry> firstBroken() {
    return store.journal().firstBroken();
  }

  @Test
  void a_journal_that_nobody_touched_is_whole() {
    assertThat(firstBroken()).isEmpty();
  }

  @Test
  void one_changed_byte_in_any_column_is_found() throws SQLException {
    var tables = new ArrayList<Table<?>>(FactTables.all());
    tables.add(ENTRY);
    // Nothing writes it any more; EveryRowTest changes a row of before.
    tables.remove(DOSE_SIGNED_OVERRIDE);
    int tried = 0;
    SampleEntries.appendFormulary(store);
    SampleEntries.appendAccess(store);
    SampleCourse.append(store);

    for (Table<?> table : tables) {
      Object row = raw.column("select min(rowid) from " + table.getName()).getFirst();
      assertThat(row).as("a sample row of " + table.getName()).isNotNull();
      for (Field<?> column : table.fields()) {
        tried += changeEachByte(table, column, String.valueOf(row));
      }
    }

    assertThat(tried).isGreaterThan(300);
    assertThat(firstBroken()).isEmpty();
  }

  private int changeEachByte(Table<?> table, Field<?> column, String row) throws SQLException {
    String where = " where rowid = " + row;
    String update = "update " + table.getName() + " set " + column.getName() + " = ?" + where;
    Object stored =
        raw.column("select " + column.getName() + " from " + table.getName() + where).getFirst();
    List<Object> changed = changedBytes(stored);
    for (Object value : changed) {
      raw.run(update, value);
      assertThat(firstBroken()).as("%s %s -> %s", column, stored, value).isPresent();
    }
    raw.run(update, stored);
    return changed.size();
  }

  private static List<Object> changedBytes(@Nullable Object stored) {
    if (!(stored instanceof String text)) {
      return List.of(stored instanceof Number number ? number.longValue() + 100 : "x");
    }
    // Each byte of what has a form of its own, such as a time; every seventh of ids and seals.
    int step = text.length() > LONGEST_TIME ? 7 : 1;
    var changed = new ArrayList<Object>();
    for (int at = 0; at < text.length(); at += step) {
      char other = (char) (text.charAt(at) ^ 1);
      changed.add(text.substring(0, at) + other + text.substring(at + 1));
    }
    return changed;
  }

  @Test
  void a_changed_fact_names_its_entry() throws SQLException {
    raw.run("update account_standing set roles = 'administrator' where roles = 'auditor'");

    assertThat(firstBroken()).contains(new BrokenEntry(3, "Entry 3 is not as it was sealed."));
  }

  @Test
  void a_value_moved_to_the_next_column_is_found() throws SQLException {
    raw.run("update entry set reason = kind || char(10) || 'reason=x', kind = '' where seq = 2");

    assertThat(firstBroken()).map(BrokenEntry::seq).contains(2L);
  }

  @Test
  void every_removed_entry_is_found() throws SQLException {
    for (long seq = 1; seq <= ENTRIES; seq++) {
      raw.run("create temp table kept as select * from entry where seq = " + seq);
      raw.run("delete from entry where seq = " + seq);

      assertThat(firstBroken()).map(BrokenEntry::seq).contains(seq);

      raw.run("insert into entry select * from kept");
      raw.run("drop table kept");
    }
    assertThat(firstBroken()).isEmpty();
  }

  @Test
  void a_removed_entry_is_found_even_if_the_others_are_counted_anew() throws SQLException {
    raw.run("delete from account_standing where entry_id = (select id from entry where seq = 3)");
    raw.run("delete from entry where seq = 3");
    raw.run("update entry set seq = 3 where seq = 4");
    raw.run("update entry set seq = 4 where seq = 5");

    assertThat(firstBroken()).map(BrokenEntry::seq).contains(3L);
  }

  @Test
  void a_removed_fact_row_is_found() throws SQLException {
    raw.run("delete from account_standing where roles = 'auditor'");

    assertThat(firstBroken()).map(BrokenEntry::seq).contains(3L);
  }

  @Test
  void a_cut_end_is_found() throws SQLException {
    cut();

    assertThat(firstBroken())
        .contains(new BrokenEntry(5, "Entry 5 is missing: the end of the journal was cut off."));
  }

  @Test
  void a_cut_end_is_found_even_if_the_head_says_so() throws SQLException {
    cut();
    raw.run("update journal_head set seq = 4, seal = (select seal from entry where seq = 4)");

    assertThat(firstBroken()).isPresent();
  }

  @Test
  void a_journal_without_its_head_is_broken() throws SQLException {
    raw.run("delete from journal_head");

    assertThat(firstBroken()).isPresent();
  }

  @Test
  void nothing_is_appended_after_a_forged_head() throws SQLException {
    cut();
    raw.run("update journal_head set seq = 4, seal = (select seal from entry where seq = 4)");

    assertThatThrownBy(this::appendOne)
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("restore a backup");
  }

  @Test
  void every_changed_byte_of_the_head_is_found() throws SQLException {
    for (Field<?> column : List.of(JOURNAL_HEAD.SEQ, JOURNAL_HEAD.SEAL, JOURNAL_HEAD.HEAD_SEAL)) {
      assertThat(changeEachByte(JOURNAL_HEAD, column, "1")).isPositive();
    }
    assertThat(firstBroken()).isEmpty();
  }

  @Test
  void an_entry_that_was_added_by_another_program_is_found() throws SQLException {
    raw.run(
        "insert into entry select 6, 'forged', kind, course_id, recorded_at, recorded_by,"
            + " on_behalf_of, corrects, reason, seal, seal, clock_believed from entry"
            + " where seq = 5");

    assertThat(firstBroken()).map(BrokenEntry::seq).contains(6L);
  }

  @Test
  void a_fact_row_without_an_entry_is_found() throws SQLException {
    raw.run("insert into sign_in (entry_id, outcome) values ('no entry', 'signed_in')");

    assertThat(firstBroken()).map(BrokenEntry::words).get().asString().contains("sign_in");
  }

  @Test
  void a_second_fact_added_to_an_entry_is_found() throws SQLException {
    raw.run(
        "insert into sign_in (entry_id, outcome) select id, 'signed_in' from entry where seq = 1");

    assertThat(firstBroken()).map(BrokenEntry::seq).contains(1L);
  }

  private void cut() throws SQLException {
    raw.run("delete from sign_in where entry_id = (select id from entry where seq = 5)");
    raw.run("delete from entry where seq = 5");
  }

  private void appendOne() {
    SampleEntries.run(
        store, () -> SampleEntries.signIn(store, Optional.empty(), SignInAttempt.Outcome.REFUSED));
  }
}
