package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.StoryClock;

/** The verb on a real data folder that another program has been at. */
class VerifyVerbTest {

  private static final String SEAL = "[0-9a-f]{64}";
  private static final String INSTANT = "2026-\\d\\d-\\d\\dT\\S+Z";

  /** One entry for the first account, two for each of the other four. */
  private static final int ENTRIES = 9;

  @TempDir private Path folder = Path.of("");

  private record Outcome(int status, String out, String err) {}

  private Outcome verify(String... more) {
    return verifyAt(folder, more);
  }

  private static Outcome verifyAt(Path data, String... more) {
    var out = new StringWriter();
    var err = new StringWriter();
    var arguments = new ArrayList<>(List.of("verify", "--data", data.toString()));
    arguments.addAll(List.of(more));
    int status =
        RungwiseCommand.commandLine()
            .setOut(new PrintWriter(out))
            .setErr(new PrintWriter(err))
            .execute(arguments.toArray(new String[0]));
    return new Outcome(status, out.toString().strip(), err.toString());
  }

  @BeforeEach
  void fill() {
    try (OpenClinic clinic = OpenClinic.in(folder, InstantSource.system())) {
      DemoClinic.fillPeople(clinic.people());
    }
  }

  /** What somebody does who can write the file and not read the key. */
  private void tamper(String... statements) throws SQLException {
    try (var raw = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("rungwise.db"));
        var statement = raw.createStatement()) {
      var triggers = new ArrayList<String>();
      try (var names =
          statement.executeQuery("select name from sqlite_master where type = 'trigger'")) {
        while (names.next()) {
          triggers.add(names.getString(1));
        }
      }
      for (String trigger : triggers) {
        statement.execute("drop trigger " + trigger);
      }
      for (String change : statements) {
        statement.execute(change);
      }
    }
  }

  @Test
  void every_signed_dose_of_the_demo_is_decided_today_as_it_was() throws IOException {
    Path told = Files.createDirectory(folder.resolve("told"));
    var clock = new StoryClock(InstantSource.system());
    try (OpenClinic clinic = OpenClinic.in(told, clock)) {
      DemoClinic.fill(clinic, clock, ZoneOffset.UTC);
    }

    Outcome outcome = verifyAt(told, "--replay", "--zone", "UTC");

    assertThat(outcome.err()).isEmpty();
    assertThat(outcome.out())
        .containsPattern("Signed doses asked again: [1-9][0-9]+[.]")
        .endsWith("Other by version: 0. Other though the version is the same: 0.");
    assertThat(outcome.status()).isZero();
  }

  private void assertBroken(String words) {
    Outcome outcome = verify();

    assertThat(outcome.out()).startsWith("The record is broken. " + words);
    assertThat(outcome.status()).isEqualTo(1);
    assertThat(outcome.err()).isEmpty();
  }

  @Test
  void a_whole_record_ends_with_0_and_tells_its_length_and_its_end() {
    Outcome outcome = verify();

    assertThat(outcome.status()).as(outcome.err()).isZero();
    assertThat(outcome.out())
        .matches(
            "The record is whole: %d entries, last seal %s of %s\\."
                .formatted(ENTRIES, SEAL, INSTANT));
    assertThat(outcome.err()).isEmpty();
  }

  @Test
  void a_record_is_checked_while_a_server_has_it_open() {
    try (OpenClinic clinic = OpenClinic.in(folder, InstantSource.system())) {
      clinic.people().authenticate("nobody", "a-wrong-password-of-nobody");

      assertThat(verify().out()).contains((ENTRIES + 1) + " entries");
    }
  }

  @Test
  void one_changed_byte_is_found_and_told_with_who_and_when() throws SQLException {
    tamper(
        "update account_standing set full_name = 'Ines Hallorad'"
            + " where full_name = 'Ines Halloran'");

    assertBroken("Entry 1 is not as it was sealed. What stands there now: ");
    assertThat(verify().out()).containsPattern("recorded " + INSTANT + " by (ines|the program)\\.");
  }

  @Test
  void a_row_removed_from_the_middle_is_found() throws SQLException {
    tamper("delete from entry where seq = 4");

    assertBroken("Entry 4 is missing.");
  }

  @Test
  void a_cut_tail_is_found_because_the_end_is_sealed_too() throws SQLException {
    tamper(
        "delete from account_standing where entry_id in (select id from entry where seq = 9)",
        "delete from entry where seq = 9");

    assertBroken("Entry 9 is missing: the end of the journal was cut off.");
  }

  @Test
  void an_older_database_that_was_put_back_is_found_by_the_end_that_is_kept_beside_it()
      throws IOException {
    byte[] older = Files.readAllBytes(folder.resolve("rungwise.db"));
    appendOne();
    putBack(older);

    assertBroken("Entry 10 is missing, though it had been saved");
  }

  private void appendOne() {
    try (OpenClinic clinic = OpenClinic.in(folder, InstantSource.system())) {
      clinic.people().authenticate("nobody", "a-wrong-password-of-nobody");
    }
  }

  private void putBack(byte[] older) throws IOException {
    Files.deleteIfExists(folder.resolve("rungwise.db-wal"));
    Files.deleteIfExists(folder.resolve("rungwise.db-shm"));
    Files.write(folder.resolve("rungwise.db"), older);
  }

  @Test
  void an_older_copy_of_the_whole_folder_is_found_only_by_a_seal_kept_elsewhere()
      throws IOException {
    byte[] older = Files.readAllBytes(folder.resolve("rungwise.db"));
    byte[] olderEnd = Files.readAllBytes(folder.resolve("journal.end"));
    appendOne();
    String kept = verify().out().replaceFirst(".*last seal (" + SEAL + ").*", "$1");
    assertThat(verify("--kept-seal", kept).status()).isZero();
    putBack(older);
    Files.write(folder.resolve("journal.end"), olderEnd);

    assertThat(verify().status()).isZero();
    Outcome outcome = verify("--kept-seal", kept);

    assertThat(outcome.status()).isEqualTo(1);
    assertThat(outcome.out()).contains("Entry 10 is missing", "the seal that was kept");
  }

  @Test
  void json_is_one_object_with_the_same_answer() throws SQLException {
    assertThat(verify("--json").out())
        .matches(
            "\\{\"whole\":true,\"entries\":%d,\"last_seal\":\"%s\",\"last_at\":\"%s\"}"
                .formatted(ENTRIES, SEAL, INSTANT));

    tamper("delete from entry where seq = 4");

    assertThat(verify("--json"))
        .isEqualTo(
            new Outcome(
                1,
                "{\"whole\":false,\"entry\":4,\"wrong\":\"Entry 4 is missing.\",\"at\":null,"
                    + "\"by\":null,\"kind\":null}",
                ""));
  }

  @Test
  void without_its_key_the_record_cannot_be_checked() throws IOException {
    Files.delete(folder.resolve("journal.key"));

    Outcome outcome = verify();

    assertThat(outcome.status()).isEqualTo(2);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err()).contains("journal.key is missing: bring it back");
  }

  @Test
  void a_folder_without_a_database_is_wrong_use_and_gets_none() throws IOException {
    Files.delete(folder.resolve("rungwise.db"));

    Outcome outcome = verify();

    assertThat(outcome.status()).isEqualTo(2);
    assertThat(outcome.err()).contains("holds no database: name the folder that serve uses");
    assertThat(folder.resolve("rungwise.db")).doesNotExist();
  }

  @Test
  void the_help_says_what_is_found_and_what_is_not() {
    Outcome outcome = verify("--help");

    assertThat(outcome.status()).isZero();
    assertThat(outcome.out())
        .contains("0   the record is whole", "1   the record is broken", "Not found is an older");
  }
}
