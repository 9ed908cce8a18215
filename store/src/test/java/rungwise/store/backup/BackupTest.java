package rungwise.store.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.people.SignInAttempt;
import rungwise.store.RawDatabase;
import rungwise.store.RecordCheck;
import rungwise.store.SampleCourse;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.journal.Inspected;

/** A copy of a folder in use, put back into an empty one. */
final class BackupTest {

  private static final Instant NOW = Instant.parse("2026-03-02T12:00:00Z");

  @TempDir Path top;
  private Path folder;
  private Path target;
  private Path empty;

  @BeforeEach
  void fill() throws IOException {
    folder = Files.createDirectory(top.resolve("data"));
    empty = Files.createDirectory(top.resolve("empty"));
    target = top.resolve("copy");
    try (var store = SqliteStore.open(folder)) {
      SampleEntries.append(store);
      SampleEntries.appendFormulary(store);
      SampleCourse.append(store);
    }
  }

  private Head backup(Path to) {
    return ((Copied.Kept) Backup.take(folder, to, Backup.Key.LEFT_OUT, NOW)).head();
  }

  private Copied restore(Path from) {
    return Restore.into(empty, from, Optional.of(key()), Optional.empty());
  }

  private Path key() {
    return folder.resolve("journal.key");
  }

  private static void appendOne(SqliteStore store) {
    SampleEntries.run(
        store, () -> SampleEntries.signIn(store, Optional.empty(), SignInAttempt.Outcome.REFUSED));
  }

  private static Inspected.Whole whole(Path folder) {
    return (Inspected.Whole) RecordCheck.of(folder, Optional.empty());
  }

  private static List<String> namesIn(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void a_backup_is_put_back_as_it_was_to_the_last_seal() throws IOException, SQLException {
    Head head = backup(target);
    assertThat(namesIn(target)).containsExactly("head.txt", "rungwise.db");
    assertThat(head.isOf(whole(folder))).isTrue();

    assertThat(restore(target)).isInstanceOf(Copied.Kept.class);

    assertThat(whole(empty)).isEqualTo(whole(folder));
    assertThat(namesIn(empty)).contains("journal.key", "rungwise.db").doesNotContain("restoring");
    try (var store = SqliteStore.open(empty);
        var raw = RawDatabase.in(empty)) {
      appendOne(store);
      assertThat(whole(empty).entries()).isEqualTo(head.entries() + 1);
      assertThat(raw.column("select count(*) from entry"))
          .containsExactly((int) head.entries() + 1);
    }
  }

  /** Changes a key in an index; the tables stay as they are. */
  private void changeIndex() throws IOException, SQLException {
    int page;
    int root;
    try (var raw = RawDatabase.in(folder)) {
      raw.run("pragma wal_checkpoint(truncate)");
      page = (Integer) raw.column("pragma page_size").getFirst();
      root =
          (Integer)
              raw.column(
                      "select rootpage from sqlite_master where name ="
                          + " 'sqlite_autoindex_screened_answer_1'")
                  .getFirst();
    }
    Path file = folder.resolve("rungwise.db");
    byte[] bytes = Files.readAllBytes(file);
    bytes[root * page - 1] ^= 1; // the last byte of the page is that of the first key on it
    Files.write(file, bytes);
  }

  @Test
  void a_backup_of_a_file_whose_index_is_damaged_is_whole_and_loses_nothing()
      throws IOException, SQLException {
    Inspected.Whole before = whole(folder);
    changeIndex();
    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Broken.class);

    backup(target);
    assertThat(restore(target)).isInstanceOf(Copied.Kept.class);

    assertThat(whole(empty)).isEqualTo(before);
  }

  @Test
  void backups_taken_while_the_folder_is_written_to_are_each_whole() throws Exception {
    var isOver = new AtomicBoolean();
    var heads = new ArrayList<Head>();
    try (var store = SqliteStore.open(folder)) {
      Thread writer =
          Thread.ofPlatform()
              .start(
                  () -> {
                    while (!isOver.get()) {
                      appendOne(store);
                    }
                  });
      for (int time = 0; time < 5; time++) {
        heads.add(backup(top.resolve("copy-" + time)));
      }
      isOver.set(true);
      writer.join();
      for (Head head : heads) {
        assertThat(store.journal().inspect(head.seal())).isInstanceOf(Inspected.Whole.class);
      }
    }

    assertThat(heads.getLast().entries()).isGreaterThan(heads.getFirst().entries());
  }

  @Test
  void what_was_written_after_the_backup_is_not_in_it_and_a_kept_head_tells() {
    backup(target);
    try (var store = SqliteStore.open(folder)) {
      appendOne(store);
    }
    Head later = backup(top.resolve("later"));

    Copied refused = Restore.into(empty, target, Optional.of(key()), later.seal());

    assertThat(refused)
        .isInstanceOfSatisfying(
            Copied.Refused.class,
            one -> assertThat(one.found().first().words()).contains("older copy was put back"));
    assertThat(empty.resolve("rungwise.db")).doesNotExist();
    assertThat(empty.resolve("journal.key")).doesNotExist();
    assertThat(Restore.into(empty, top.resolve("later"), Optional.of(key()), later.seal()))
        .isInstanceOf(Copied.Kept.class);
  }

  @Test
  void a_folder_that_is_not_empty_is_refused_and_stays_as_it_is() throws IOException {
    backup(target);
    Inspected before = whole(folder);

    assertThatThrownBy(() -> Restore.into(folder, target, Optional.of(key()), Optional.empty()))
        .isInstanceOf(CannotOpenStore.class)
        .hasMessageContaining("is not empty");

    assertThat(whole(folder)).isEqualTo(before);
    Files.writeString(empty.resolve("somebody's.txt"), "notes");
    assertThatThrownBy(() -> restore(target)).hasMessageContaining("is not empty");
  }

  @Test
  void a_folder_in_use_is_refused() {
    backup(target);
    try (var store = SqliteStore.open(empty)) {
      assertThat(store.courses().all()).isEmpty();
      assertThatThrownBy(() -> restore(target)).hasMessageContaining("in use by another");
    }
  }

  @Test
  void the_key_is_put_in_only_when_asked_for_and_another_key_is_refused() throws IOException {
    backup(target);
    assertThatThrownBy(() -> Restore.into(empty, target, Optional.empty(), Optional.empty()))
        .hasMessageContaining("The key is not in the backup");
    Path other = Files.writeString(top.resolve("other.key"), "ab".repeat(32) + "\n");
    assertThatThrownBy(() -> Restore.into(empty, target, Optional.of(other), Optional.empty()))
        .hasMessageContaining("is not the one that this backup is sealed with");

    Path withKey = top.resolve("with-key");
    Backup.take(folder, withKey, Backup.Key.PUT_IN, NOW);

    assertThat(Restore.into(empty, withKey, Optional.empty(), Optional.empty()))
        .isInstanceOf(Copied.Kept.class);
  }

  @Test
  void a_broken_record_leaves_no_backup_and_says_what_is_broken() throws Exception {
    try (var raw = RawDatabase.withoutTriggers(folder)) {
      raw.run("update account_standing set roles = 'administrator' where roles = 'auditor'");
    }

    assertThat(Backup.take(folder, target, Backup.Key.LEFT_OUT, NOW))
        .isInstanceOfSatisfying(
            Copied.Refused.class, one -> assertThat(one.found().first().seq()).isEqualTo(3));

    assertThat(namesIn(top)).containsExactly("data", "empty");
  }

  @Test
  void an_existing_backup_is_never_written_over() throws IOException {
    backup(target);
    byte[] before = Files.readAllBytes(target.resolve("rungwise.db"));

    assertThatThrownBy(() -> backup(target)).hasMessageContaining("something at");

    assertThat(Files.readAllBytes(target.resolve("rungwise.db"))).isEqualTo(before);
  }

  @Test
  void a_backup_that_cannot_be_written_leaves_nothing() throws IOException {
    assertThatThrownBy(() -> backup(top.resolve("no").resolve("such")))
        .isInstanceOf(CannotOpenStore.class)
        .hasMessageContaining("cannot be written");
    Files.writeString(target, "a file");
    assertThatThrownBy(() -> backup(target)).hasMessageContaining("something at");
    assertThat(namesIn(top)).containsExactly("copy", "data", "empty");
  }

  @Test
  void a_backup_of_which_one_byte_was_changed_is_not_put_back() throws IOException {
    backup(target);
    Path database = target.resolve("rungwise.db");
    byte[] bytes = Files.readAllBytes(database);
    bytes[bytes.length / 2] ^= 1;
    Files.write(database, bytes);

    assertThatThrownBy(() -> restore(target)).hasMessageContaining("is not as it was written");
    assertThat(namesIn(empty)).containsExactly("lock");
  }

  @Test
  void a_forged_backup_whose_head_was_written_anew_is_found_by_its_seals() throws Exception {
    Head head = backup(target);
    try (var raw = RawDatabase.withoutTriggers(target)) {
      raw.run("update injection_reported set grade = 4");
    }
    var forged =
        new Head(
            head.entries(),
            head.lastSeal(),
            head.lastAt(),
            head.madeAt(),
            Folders.hash(target.resolve("rungwise.db")),
            head.keyMark());
    Files.writeString(target.resolve("head.txt"), forged.text());

    assertThat(restore(target)).isInstanceOf(Copied.Refused.class);
    assertThat(namesIn(empty)).containsExactly("lock");
  }

  @Test
  void a_head_of_another_record_is_refused() throws IOException {
    Head head = backup(target);
    var other =
        new Head(
            head.entries() - 1,
            head.lastSeal(),
            head.lastAt(),
            head.madeAt(),
            head.databaseHash(),
            head.keyMark());
    Files.writeString(target.resolve("head.txt"), other.text());

    assertThat(restore(target)).isInstanceOf(Copied.Refused.class);
  }

  @Test
  void a_restore_that_was_broken_off_can_be_done_again() throws IOException {
    backup(target);
    Path room = Files.createDirectory(empty.resolve("restoring"));
    Files.writeString(room.resolve("rungwise.db"), "half");

    assertThat(restore(target)).isInstanceOf(Copied.Kept.class);
  }

  @Test
  void the_head_of_an_empty_record_can_be_read_again() throws IOException {
    Path fresh = Files.createDirectory(top.resolve("fresh"));
    SqliteStore.open(fresh).close();

    Copied copied = Backup.take(fresh, target, Backup.Key.PUT_IN, NOW);

    Head head = Head.read(target.resolve("head.txt"));
    assertThat(copied).isEqualTo(new Copied.Kept(head, true));
    assertThat(head.seal()).isEmpty();
  }

  @Test
  void what_is_no_head_is_refused_with_what_to_name() throws IOException {
    Path file = top.resolve("some.txt");
    assertThatThrownBy(() -> Head.read(file)).hasMessageContaining("name the file head.txt");
    for (String text : List.of("", "x", "Head of a Rungwise backup, form 1\nentries=x\n")) {
      Files.writeString(file, text);
      assertThatThrownBy(() -> Head.read(file))
          .isInstanceOf(CannotOpenStore.class)
          .hasMessageContaining("not as backup wrote it");
    }
  }
}
