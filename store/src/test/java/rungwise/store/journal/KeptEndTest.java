package rungwise.store.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.SignInAttempt;
import rungwise.clinic.soundness.Flaw;
import rungwise.store.RecordCheck;
import rungwise.store.SampleCourse;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;
import rungwise.store.backup.Backup;
import rungwise.store.backup.Copied;

/** A record that lost its last entries is whole in itself, and is told all the same. */
final class KeptEndTest {

  private static final Instant NOW = SampleEntries.NOW;

  @TempDir Path top;
  private Path folder;
  private Path older;

  /** Three entries are in the folder that the older copy of it has not. */
  @BeforeEach
  void fill() throws IOException {
    folder = Files.createDirectory(top.resolve("data"));
    older = Files.createDirectory(top.resolve("older"));
    try (var store = SqliteStore.open(folder)) {
      SampleEntries.append(store);
      SampleCourse.append(store);
    }
    copy(folder, older);
    try (var store = SqliteStore.open(folder)) {
      signIn(store);
      signIn(store);
      signIn(store);
    }
  }

  private static void signIn(SqliteStore store) {
    SampleEntries.run(
        store, () -> SampleEntries.signIn(store, Optional.empty(), SignInAttempt.Outcome.REFUSED));
  }

  private static void copy(Path from, Path to) throws IOException {
    try (var files = Files.list(from)) {
      for (Path file : files.toList()) {
        Files.copy(file, to.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  /** As a write-ahead log that was cut, or an older database file that was put back. */
  private void loseTheLast() throws IOException {
    Files.copy(
        older.resolve("rungwise.db"),
        folder.resolve("rungwise.db"),
        StandardCopyOption.REPLACE_EXISTING);
  }

  private long last() {
    return ((Inspected.Whole) RecordCheck.of(older, Optional.empty())).entries();
  }

  private BrokenEntry broken() {
    return ((Inspected.Broken) RecordCheck.of(folder, Optional.empty())).first();
  }

  private static List<Flaw> flaws(SqliteStore store) {
    return store.courses().find(store.courses().all().getFirst()).orElseThrow().flaws();
  }

  @Test
  void a_record_that_ends_where_it_ended_is_whole() {
    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Whole.class);
    try (var store = SqliteStore.open(folder)) {
      assertThat(flaws(store)).isEmpty();
      assertThat(store.watch().isEndBehind()).isFalse();
    }
  }

  @Test
  void lost_entries_are_told_by_verify_and_by_every_course() throws IOException {
    long last = last();
    loseTheLast();

    assertThat(broken().seq()).isEqualTo(last + 1);
    assertThat(broken().words()).contains("is missing, though it had been saved");
    try (var store = SqliteStore.open(folder)) {
      assertThat(flaws(store)).containsExactly(new Flaw(Flaw.What.CUT, last + 1));
    }
  }

  @Test
  void the_loss_is_told_still_after_more_was_written_and_the_server_was_started_again()
      throws IOException {
    long last = last();
    loseTheLast();
    try (var store = SqliteStore.open(folder)) {
      for (int more = 0; more < 5; more++) {
        signIn(store);
      }
    }

    assertThat(broken().seq()).isEqualTo(last + 3);
    try (var store = SqliteStore.open(folder)) {
      assertThat(flaws(store)).extracting(Flaw::what).containsExactly(Flaw.What.CUT);
    }
  }

  @Test
  void no_backup_is_taken_of_a_record_that_lost_entries() throws IOException {
    loseTheLast();

    assertThat(Backup.take(folder, top.resolve("backup"), Backup.Key.LEFT_OUT, NOW))
        .isInstanceOf(Copied.Refused.class);
    assertThat(top.resolve("backup")).doesNotExist();
  }

  @Test
  void a_loss_that_is_accepted_stands_on_record_and_the_record_is_whole_again() throws IOException {
    long last = last();
    loseTheLast();
    try (var store = SqliteStore.open(folder)) {
      assertThat(store.journal().acceptEnd(NOW, AccountId.PROGRAM.text(), "the backup of Monday"))
          .isEqualTo(last + 1);

      assertThat(flaws(store)).isEmpty();
      assertThatThrownBy(() -> store.journal().acceptEnd(NOW, AccountId.PROGRAM.text(), "again"))
          .isInstanceOf(IllegalStateException.class);
    }
    assertThat(RecordCheck.of(folder, Optional.empty()))
        .isInstanceOfSatisfying(
            Inspected.Whole.class, whole -> assertThat(whole.entries()).isEqualTo(last + 1));
  }

  @Test
  void a_file_that_is_behind_by_a_commit_as_after_a_kill_is_no_loss() throws IOException {
    Files.copy(
        older.resolve(EndFile.NAME),
        folder.resolve(EndFile.NAME),
        StandardCopyOption.REPLACE_EXISTING);

    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Whole.class);
    try (var store = SqliteStore.open(folder)) {
      assertThat(flaws(store)).isEmpty();
    }
  }

  @Test
  void a_folder_without_the_file_begins_one() throws IOException {
    Files.delete(folder.resolve(EndFile.NAME));

    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Whole.class);
    try (var store = SqliteStore.open(folder)) {
      assertThat(flaws(store)).isEmpty();
    }
    loseTheLast();
    assertThat(broken().words()).contains("though it had been saved");
  }

  @Test
  void a_line_that_is_torn_leaves_the_one_before_and_two_are_told() throws IOException {
    Path file = folder.resolve(EndFile.NAME);
    byte[] whole = Files.readAllBytes(file);
    for (int at = 0; at < whole.length; at += 7) {
      byte[] torn = whole.clone();
      torn[at] ^= 1;
      Files.write(file, torn);
      assertThat(RecordCheck.of(folder, Optional.empty()))
          .as("byte %d", at)
          .isInstanceOf(Inspected.Whole.class);
    }
    Files.write(file, new byte[whole.length]);

    assertThat(broken().words()).contains("is damaged");
    try (var store = SqliteStore.open(folder)) {
      assertThat(flaws(store)).extracting(Flaw::what).containsExactly(Flaw.What.END_NOT_KNOWN);
    }
  }

  @Test
  void nothing_that_was_not_committed_is_kept() {
    try (var store = SqliteStore.open(folder)) {
      assertThatThrownBy(
              () ->
                  SampleEntries.run(
                      store,
                      () -> {
                        SampleEntries.signIn(
                            store, Optional.empty(), SignInAttempt.Outcome.REFUSED);
                        throw new IllegalArgumentException("on purpose");
                      }))
          .hasMessage("on purpose");
    }
    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Whole.class);
  }
}
