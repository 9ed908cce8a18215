package rungwise.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.soundness.Flaw;

final class RecordWatchTest {

  @TempDir Path folder;
  private SqliteStore store;
  private RawDatabase raw;

  @BeforeEach
  void fill() throws SQLException {
    store = SqliteStore.open(folder);
    SampleEntries.append(store);
    SampleEntries.appendFormulary(store);
    SampleEntries.appendAccess(store);
    SampleCourse.append(store);
    raw = RawDatabase.withoutTriggers(folder);
    raw.run("pragma foreign_keys = off");
  }

  @AfterEach
  void close() throws SQLException {
    raw.close();
    store.close();
  }

  private List<String> texts(String sql) throws SQLException {
    return raw.column(sql).stream().map(String::valueOf).toList();
  }

  private CourseFile course() {
    return store.courses().find(store.courses().all().getFirst()).orElseThrow();
  }

  private List<Flaw> look() {
    store.watch().lookAtFoundation();
    store.watch().lookAtAll();
    return store.watch().flaws();
  }

  @Test
  void a_sound_record_has_no_flaw() {
    assertThat(look()).isEmpty();
    assertThat(course().flaws()).isEmpty();
  }

  @Test
  void a_changed_row_that_courses_rest_on_is_a_flaw_of_every_course() throws SQLException {
    for (String table :
        List.of(
            "account_standing",
            "preparation",
            "preparation_ingredient",
            "preparation_withdrawn",
            "syringe",
            "protocol_signed",
            "population_signed")) {
      String row = texts("select rowid from " + table).getFirst();
      String column =
          texts("select name from pragma_table_info('" + table + "') where cid = 1").getFirst();
      String where = " where rowid = " + row;
      Object stored = raw.column("select " + column + " from " + table + where).getFirst();
      long entry =
          Long.parseLong(
              texts(
                      "select e.seq from entry e join %s f on f.entry_id = e.id where f.rowid = %s"
                          .formatted(table, row))
                  .getFirst());

      raw.run("update " + table + " set " + column + " = ?" + where, stored + "1");
      store.watch().lookAtFoundation();

      assertThat(store.watch().flaws())
          .as(table + "." + column)
          .containsExactly(new Flaw(Flaw.What.SHARED, entry));
      assertThat(course().flaws()).containsExactly(new Flaw(Flaw.What.SHARED, entry));
      raw.run("update " + table + " set " + column + " = ?" + where, stored);
    }
    store.watch().lookAtFoundation();
    assertThat(course().flaws()).isEmpty();
  }

  @Test
  void a_changed_entry_that_courses_rest_on_is_a_flaw_also_where_its_kind_is_changed()
      throws SQLException {
    String seq =
        texts(
                "select e.seq from entry e join protocol_signed p on p.entry_id = e.id"
                    + " where e.course_id is null")
            .getFirst();
    raw.run("update entry set kind = 'page_viewed' where seq = " + seq);

    assertThat(look()).containsExactly(new Flaw(Flaw.What.SHARED, Long.parseLong(seq)));
  }

  @Test
  void an_entry_that_was_removed_breaks_the_chain_for_every_course() throws SQLException {
    long seq =
        Long.parseLong(texts("select min(seq) from entry where kind = 'page_viewed'").getFirst());
    raw.run("delete from entry where seq = " + seq);

    assertThat(look()).contains(new Flaw(Flaw.What.CHAIN, seq));
    assertThat(course().flaws()).contains(new Flaw(Flaw.What.CHAIN, seq));
  }

  @Test
  void an_end_that_was_cut_breaks_the_chain() throws SQLException {
    long last = Long.parseLong(texts("select max(seq) from entry").getFirst());
    raw.run("delete from entry where seq = " + last);

    assertThat(look()).contains(new Flaw(Flaw.What.CHAIN, last));
  }

  @Test
  void what_is_wrong_with_one_course_or_with_a_trace_stops_no_other() throws SQLException {
    for (String change :
        List.of(
            "update injection_reported set grade = 4 - grade",
            "update page_viewed set screen = 'order'",
            "update page_viewed_course set course_id = 'x'",
            "update sign_in set outcome = 'x'",
            "update entry set seal = 'x' where course_id is not null",
            "update entry set reason = 'x' where kind = 'page_viewed'")) {
      raw.run("begin");
      raw.run(change);
      raw.run("commit");
      store.watch().lookAtFoundation();

      assertThat(store.watch().lookAtAll()).as(change).isPresent();
      assertThat(store.watch().flaws()).as(change).isEmpty();
    }
  }
}
