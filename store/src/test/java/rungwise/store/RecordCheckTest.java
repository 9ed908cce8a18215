package rungwise.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.people.SignInAttempt;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.journal.BrokenEntry;
import rungwise.store.journal.Inspected;
import rungwise.store.journal.Inspected.Standing;
import rungwise.store.journal.Inspected.Whole;

final class RecordCheckTest {

  private static final int ENTRIES = 5;

  @TempDir Path folder;

  @BeforeEach
  void fill() {
    try (var store = SqliteStore.open(folder)) {
      SampleEntries.append(store);
    }
  }

  private Inspected check() {
    return RecordCheck.of(folder, Optional.empty());
  }

  private Whole whole() {
    return (Whole) check();
  }

  private Inspected.Broken broken() {
    return (Inspected.Broken) check();
  }

  private static void appendOne(SqliteStore store) {
    SampleEntries.run(
        store, () -> SampleEntries.signIn(store, Optional.empty(), SignInAttempt.Outcome.REFUSED));
  }

  private void assertCannotCheck(String words) {
    assertThatThrownBy(this::check).isInstanceOf(CannotOpenStore.class).hasMessageContaining(words);
  }

  @Test
  void a_whole_record_tells_how_long_it_is_and_how_it_ends() throws SQLException {
    Whole whole = whole();

    assertThat(whole.entries()).isEqualTo(ENTRIES);
    assertThat(whole.lastAt()).contains(SampleEntries.NOW);
    try (var raw = RawDatabase.in(folder)) {
      assertThat(raw.column("select seal from entry where seq = 5"))
          .containsExactly(whole.lastSeal());
    }
  }

  @Test
  void a_record_that_is_in_use_is_checked_and_what_is_written_meanwhile_is_not_held_up() {
    try (var store = SqliteStore.open(folder)) {
      appendOne(store);
      assertThat(whole().entries()).isEqualTo(ENTRIES + 1);
      appendOne(store);
      assertThat(whole().entries()).isEqualTo(ENTRIES + 2);
    }
  }

  @Test
  void checking_changes_nothing_of_the_database() throws IOException {
    byte[] before = Files.readAllBytes(folder.resolve("rungwise.db"));

    check();

    assertThat(Files.readAllBytes(folder.resolve("rungwise.db"))).isEqualTo(before);
    SqliteStore.open(folder).close();
  }

  @Test
  void a_broken_entry_is_told_with_what_stands_there_now() throws SQLException {
    try (var raw = RawDatabase.withoutTriggers(folder)) {
      raw.run("update account_standing set roles = 'administrator' where roles = 'auditor'");
    }

    assertThat(broken().first()).isEqualTo(new BrokenEntry(3, "Entry 3 is not as it was sealed."));
    assertThat(broken().standing())
        .contains(new Standing(SampleEntries.NOW, "zoe", "roles_changed"));
  }

  @Test
  void of_a_removed_entry_nothing_is_told_but_its_number() throws SQLException {
    try (var raw = RawDatabase.withoutTriggers(folder)) {
      raw.run("delete from entry where seq = 2");
    }

    assertThat(broken().first().seq()).isEqualTo(2);
    assertThat(broken().standing()).isEmpty();
  }

  @Test
  void an_end_that_was_cut_with_its_head_put_back_is_found_by_a_seal_kept_elsewhere()
      throws SQLException, IOException {
    String kept;
    try (var raw = RawDatabase.withoutTriggers(folder)) {
      raw.run("create table kept_head as select * from journal_head");
      try (var store = SqliteStore.open(folder)) {
        appendOne(store);
      }
      kept = whole().lastSeal();
      assertThat(RecordCheck.of(folder, Optional.of(kept))).isEqualTo(whole());

      raw.run("delete from sign_in where entry_id = (select id from entry where seq = 6)");
      raw.run("delete from entry where seq = 6");
      raw.run("delete from journal_head");
      raw.run("insert into journal_head select * from kept_head");
    }

    assertThat(broken().first().words()).contains("though it had been saved");
    Files.delete(folder.resolve("journal.end"));

    assertThat(whole().entries()).isEqualTo(ENTRIES);
    assertThat(RecordCheck.of(folder, Optional.of(kept)))
        .isInstanceOfSatisfying(
            Inspected.Broken.class,
            found -> {
              assertThat(found.first().seq()).isEqualTo(6);
              assertThat(found.first().words()).contains("the seal that was kept");
            });
  }

  @Test
  void without_a_folder_a_database_or_a_key_there_is_nothing_to_check() throws IOException {
    assertThatThrownBy(() -> RecordCheck.of(folder.resolve("no"), Optional.empty()))
        .isInstanceOf(CannotOpenStore.class)
        .hasMessageContaining("does not exist");

    Path key = folder.resolve("journal.key");
    byte[] kept = Files.readAllBytes(key);
    Files.delete(key);
    assertCannotCheck("is missing");
    assertThat(key).doesNotExist();
    Files.write(key, kept);

    Files.delete(folder.resolve("rungwise.db"));
    assertCannotCheck("holds no database");
    assertThat(folder.resolve("rungwise.db")).doesNotExist();
  }

  @Test
  void tables_of_another_version_are_no_broken_record() throws SQLException {
    try (var raw = RawDatabase.in(folder)) {
      raw.run("delete from flyway_schema_history where version = '20'");
    }

    assertCannotCheck("another version");
  }
}
