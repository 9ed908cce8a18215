package rungwise.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.Credential;
import rungwise.clinic.people.SignInAttempt.Outcome;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.database.Database;

final class SqliteStoreTest {

  private static final int WRITERS = 16;
  private static final int WRITES_OF_EACH = 25;
  private static final int ACKNOWLEDGED_BEFORE_THE_KILL = 40;

  @TempDir Path folder;

  private static void assertCannotOpen(Path folder, String words) {
    assertThatThrownBy(() -> SqliteStore.open(folder).close())
        .isInstanceOf(CannotOpenStore.class)
        .hasMessageContaining(words);
  }

  private static int count(SqliteStore store) {
    return store
        .credentials()
        .find(AccountId.PROGRAM, Credential.Kind.CODE)
        .map(counter -> Integer.parseInt(counter.hash()))
        .orElse(0);
  }

  private static void countOneMore(SqliteStore store) {
    SampleEntries.run(
        store,
        () -> {
          String next = String.valueOf(count(store) + 1);
          store
              .credentials()
              .put(new Credential(AccountId.PROGRAM, Credential.Kind.CODE, next, Optional.empty()));
          SampleEntries.signIn(store, Optional.empty(), Outcome.REFUSED);
        });
  }

  @Test
  void of_16_threads_that_read_and_then_write_none_is_lost()
      throws ExecutionException, InterruptedException, SQLException {
    try (var store = SqliteStore.open(folder);
        var raw = RawDatabase.in(folder);
        var threads = Executors.newFixedThreadPool(WRITERS)) {
      var done = new ArrayList<Future<?>>();
      for (int writer = 0; writer < WRITERS; writer++) {
        done.add(
            threads.submit(
                () -> {
                  for (int write = 0; write < WRITES_OF_EACH; write++) {
                    countOneMore(store);
                  }
                }));
      }
      for (Future<?> one : done) {
        one.get();
      }

      assertThat(count(store)).isEqualTo(WRITERS * WRITES_OF_EACH);
      assertThat(raw.column("select count(*) from entry")).containsExactly(400);
      assertThat(store.journal().firstBroken()).isEmpty();
    }
  }

  @Test
  void a_failed_transaction_inside_another_undoes_only_its_own_work() {
    try (var store = SqliteStore.open(folder)) {
      SampleEntries.run(
          store,
          () -> {
            SampleEntries.invite(store, SampleEntries.account(1, "ana.ruiz"));
            assertThatThrownBy(
                    () ->
                        SampleEntries.run(
                            store,
                            () -> {
                              SampleEntries.invite(store, SampleEntries.account(2, "zoe"));
                              throw new IllegalArgumentException("on purpose");
                            }))
                .hasMessage("on purpose");
          });

      assertThat(store.accounts().all()).hasSize(1);
      assertThat(store.journal().firstBroken()).isEmpty();
    }
  }

  @Test
  void what_was_written_is_there_after_reopening() {
    List<?> before;
    try (var store = SqliteStore.open(folder)) {
      SampleEntries.append(store);
      before = store.accounts().all();
    }

    try (var store = SqliteStore.open(folder)) {
      assertThat(store.accounts().all()).hasSize(2).isEqualTo(before);
      assertThat(store.journal().firstBroken()).isEmpty();
      countOneMore(store);
      assertThat(store.journal().firstBroken()).isEmpty();
    }
  }

  @Test
  void a_missing_folder_is_told() {
    assertCannotOpen(folder.resolve("nowhere"), "does not exist: create it");
  }

  @Test
  void a_folder_that_cannot_be_written_is_told() {
    Path system = Path.of("/proc/self");
    boolean isLinux = Files.isDirectory(system);
    boolean isReadOnly = isLinux || folder.toFile().setWritable(false);

    assertThat(isReadOnly).isTrue();
    assertCannotOpen(isLinux ? system : folder, "cannot be written");
  }

  @Test
  void a_folder_that_this_process_has_open_is_refused() {
    try (var store = SqliteStore.open(folder)) {
      assertCannotOpen(folder, "in use by another running Rungwise");
      countOneMore(store);
    }

    try (var again = SqliteStore.open(folder)) {
      assertThat(count(again)).isOne();
    }
  }

  @Test
  void a_folder_that_another_process_has_open_is_refused_and_its_kill_loses_nothing()
      throws IOException, InterruptedException {
    Process other = startAnotherProcess();
    int acknowledged = 0;
    try (var lines =
        new BufferedReader(new InputStreamReader(other.getInputStream(), StandardCharsets.UTF_8))) {
      while (acknowledged < ACKNOWLEDGED_BEFORE_THE_KILL) {
        String line = lines.readLine();
        assertThat(line).isNotNull();
        acknowledged = Integer.parseInt(line);
      }
      assertCannotOpen(folder, "in use by another running Rungwise");
    } finally {
      other.destroyForcibly().waitFor();
    }

    try (var store = SqliteStore.open(folder)) {
      assertThat(count(store)).isGreaterThanOrEqualTo(acknowledged);
      assertThat(store.journal().firstBroken()).isEmpty();
    }
  }

  private Process startAnotherProcess() throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "--enable-native-access=ALL-UNNAMED",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            CountingForever.class.getName(),
            folder.toString())
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  /** A process that counts in the store, and says each number once it is committed. */
  static final class CountingForever {
    private CountingForever() {}

    public static void main(String[] args) {
      try (var store = SqliteStore.open(Path.of(args[0]))) {
        while (true) {
          countOneMore(store);
          System.out.println(count(store));
        }
      }
    }
  }

  @Test
  void a_database_without_its_key_is_not_opened_and_gets_no_new_key() throws IOException {
    SqliteStore.open(folder).close();
    Files.delete(folder.resolve("journal.key"));

    assertCannotOpen(folder, "journal.key is missing");

    assertThat(folder.resolve("journal.key")).doesNotExist();
  }

  @Test
  void a_damaged_key_is_told() throws IOException {
    SqliteStore.open(folder).close();

    for (String damaged : new String[] {"", "zz", "00ff", "0".repeat(63)}) {
      Files.writeString(folder.resolve("journal.key"), damaged);
      assertCannotOpen(folder, "is damaged");
    }
  }

  @Test
  void another_key_breaks_the_journal_at_its_first_entry() throws IOException {
    try (var store = SqliteStore.open(folder)) {
      SampleEntries.append(store);
    }
    Files.writeString(folder.resolve("journal.key"), "0".repeat(64));

    try (var store = SqliteStore.open(folder)) {
      assertThat(store.journal().firstBroken()).get().extracting("seq").isEqualTo(1L);
    }
  }

  @Test
  void a_file_that_is_no_database_is_told() throws IOException {
    SqliteStore.open(folder).close();
    Files.writeString(folder.resolve("rungwise.db"), "not a database ".repeat(100));

    assertCannotOpen(folder, "restore a backup");
  }

  @Test
  void a_database_of_a_newer_program_is_not_opened() throws SQLException {
    SqliteStore.open(folder).close();
    try (var raw = RawDatabase.in(folder)) {
      raw.run(
          "insert into flyway_schema_history (installed_rank, version, description, type, script,"
              + " checksum, installed_by, execution_time, success) values (99, '999', 'later',"
              + " 'SQL', 'V999__later.sql', 1, 'x', 1, 1)");
    }

    assertCannotOpen(folder, "newer");
  }

  @Test
  void only_the_owner_reads_the_key_and_the_database() throws IOException {
    try (var store = SqliteStore.open(folder)) {
      countOneMore(store);
      for (String name : List.of("journal.key", "rungwise.db", "rungwise.db-wal", "lock")) {
        assertThat(Files.getPosixFilePermissions(folder.resolve(name)))
            .as(name)
            .isEqualTo(PosixFilePermissions.fromString("rw-------"));
      }
    }
  }

  @Test
  void who_reads_has_no_right_to_write() {
    try (var store = SqliteStore.open(folder)) {
      var database = (Database) store.transactions();

      assertThatThrownBy(() -> database.reading().execute("create table of_a_reader (a integer)"))
          .hasMessageContaining("SQLITE_READONLY");
      assertThatCode(() -> countOneMore(store)).doesNotThrowAnyException();
    }
  }
}
