package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.StoryClock;

/** Backup, restore, export and import on a folder with an invented past. */
class CarryVerbsTest {

  private static final String HEADER =
      "patient,group,injection,volume_ml,potency,strength,grade,duration_min,duration_status,"
          + "duration_upper_min";

  @TempDir private static Path story = Path.of("");
  @TempDir private Path top = Path.of("");
  private Path empty = Path.of("");

  private record Outcome(int status, String out, String err) {}

  @BeforeAll
  static void tell() {
    var clock = new StoryClock(InstantSource.system());
    try (OpenClinic clinic = OpenClinic.in(story, clock)) {
      DemoClinic.fill(clinic, clock, ZoneOffset.UTC);
    }
  }

  @BeforeEach
  void makeFolder() throws IOException {
    empty = Files.createDirectory(top.resolve("empty"));
  }

  private static Outcome run(Object... arguments) {
    var out = new StringWriter();
    var err = new StringWriter();
    int status =
        RungwiseCommand.commandLine()
            .setOut(new PrintWriter(out))
            .setErr(new PrintWriter(err))
            .execute(List.of(arguments).stream().map(Object::toString).toArray(String[]::new));
    return new Outcome(status, out.toString().strip(), err.toString().strip());
  }

  private static Outcome done(Object... arguments) {
    Outcome outcome = run(arguments);
    assertThat(outcome.status()).as(outcome.err()).isZero();
    return outcome;
  }

  private static String refused(Object... arguments) {
    Outcome outcome = run(arguments);
    assertThat(outcome.status()).as(outcome.out()).isEqualTo(2);
    return outcome.err();
  }

  private Path file(String name, String... lines) throws IOException {
    return Files.writeString(top.resolve(name), String.join("\n", lines) + "\n");
  }

  @Test
  void a_backup_is_restored_and_verified_against_its_head() {
    Path copy = top.resolve("copy");
    assertThat(done("backup", "--data", story, "--to", copy).out())
        .contains("is whole", "The key that seals the record is not in it");
    Path key = story.resolve("journal.key");
    Path head = copy.resolve("head.txt");

    assertThat(refused("restore", "--from", copy, "--data", empty)).contains("The key is not in");
    done("restore", "--from", copy, "--data", empty, "--key", key, "--head", head);

    assertThat(done("verify", "--data", empty, "--head", head).out()).contains("is whole");
    assertThat(refused("restore", "--from", copy, "--data", empty, "--key", key))
        .contains("is not empty");
    assertThat(refused("backup", "--data", story, "--to", copy)).contains("already");
    assertThat(refused("verify", "--data", empty, "--head", head, "--kept-seal", "a".repeat(64)))
        .contains("give one of them");
  }

  @Test
  void an_older_backup_is_refused_when_the_head_of_a_later_one_is_given() {
    Path older = top.resolve("older");
    Path later = top.resolve("later");
    done("backup", "--data", story, "--to", older, "--with-key");
    try (OpenClinic clinic = OpenClinic.in(story, InstantSource.system())) {
      clinic.people().authenticate("nobody", "a-wrong-password-of-nobody");
    }
    assertThat(done("backup", "--data", story, "--to", later, "--json").out())
        .matches(
            "\\{\"whole\":true,\"entries\":\\d+,\"last_seal\":\"[0-9a-f]{64}\","
                + "\"made_at\":\"\\S+\",\"with_key\":false,\"last_at\":\"\\S+\"}");

    Outcome outcome =
        run("restore", "--from", older, "--data", empty, "--head", later.resolve("head.txt"));

    assertThat(outcome.status()).isEqualTo(1);
    assertThat(outcome.out()).contains("Nothing was put back", "older copy");
    assertThat(empty.resolve("rungwise.db")).doesNotExist();
  }

  @Test
  void the_record_is_exported_and_imported_and_exported_to_the_same_bytes() throws IOException {
    Path first = top.resolve("first.json");
    Path second = top.resolve("second.json");
    done("export", "--data", story, "--to", first);
    assertThat(done("import", first, "--data", empty).out()).contains("Nothing was written");
    assertThat(empty).isEmptyDirectory();

    done("import", first, "--data", empty, "--commit");
    done("export", "--data", empty, "--to", second);

    assertThat(Files.mismatch(first, second)).isEqualTo(-1);
    assertThat(done("verify", "--data", empty).out()).contains("is whole");
    assertThat(refused("import", first, "--data", empty, "--commit")).contains("not empty");
  }

  @Test
  void one_course_is_imported_alone_and_an_administrator_gets_in_by_a_code() throws IOException {
    Path first = top.resolve("course.json");
    Path second = top.resolve("again.json");
    done("export", "--data", story, "--to", first, "--course", "hl-1017");
    assertThat(Files.readString(first)).contains("Corvin Adeyemi").doesNotContain("Matthis Okoro");

    String words = done("import", first, "--data", empty, "--commit", "--code-for", "ines").out();
    done("export", "--data", empty, "--to", second, "--course", "HL-1017");

    assertThat(words).containsPattern("One-time code: [0-9A-Z]{4}-");
    String code = words.replaceFirst("(?s).*One-time code: ", "");
    try (OpenClinic clinic = OpenClinic.in(empty, InstantSource.system())) {
      var opened =
          clinic.people().accept(code, "ines", Optional.empty(), "paper-boat-under-lantern");
      assertThat(opened.faults()).isEmpty();
    }
    assertThat(refused("export", "--data", story, "--to", top.resolve("x.json"), "--course", "no"))
        .contains("no course is of that record number");
  }

  @Test
  void histories_are_exported_and_can_be_read_again() throws IOException {
    Path first = top.resolve("all.csv");
    Path packed = top.resolve("all.csv.gz");
    assertThat(done("export", "--data", story, "--to", first).out()).contains("injections");
    done("export", "--data", story, "--to", packed);

    assertThat(Files.readAllLines(first).getFirst()).isEqualTo(HEADER + ",time,preparation,barrel");
    assertThat(done("import", first, "--data", story).out())
        .contains(" 0 of them history only; 0 set aside");
    assertThat(done("import", packed, "--data", story).out()).contains("0 set aside");
  }

  @Test
  void faults_are_told_by_line_and_only_their_patients_are_set_aside() throws IOException {
    Path csv =
        file(
            "history.csv",
            HEADER,
            "P-1,vasculogenic,1,0.2,1,1,3,45,exact,",
            "P-2,vasculogenic,1,0.2,1,1,9,45,exact,",
            "P-2,vasculogenic,2,0.2,1,1,3,45,exact,",
            "P-3,vasculogenic,1,0.2,1,1,2,,none,");

    Outcome look = run("import", csv, "--data", story);
    assertThat(look.status()).isEqualTo(2);
    assertThat(look.err()).startsWith("line 3: grade");
    assertThat(look.out()).contains("2 patients with 2 injections, 2 of them history only; 1 set");

    String committed = done("import", csv, "--data", story, "--commit").out();
    String id = committed.replaceFirst(".*import ([0-9a-f-]{36}).*", "$1");
    assertThat(refused("import", csv, "--data", story)).contains("was brought in before");

    assertThat(refused("import", "--undo", id, "--data", story)).contains("Write why");
    assertThat(done("import", "--undo", id, "--reason", "the wrong file", "--data", story).out())
        .contains("2 patients");
    assertThat(run("import", csv, "--data", story).out()).contains("2 patients with 2 injections");
    assertThat(done("verify", "--data", story).out()).contains("is whole");
  }

  @Test
  void a_line_of_which_the_patient_is_not_known_stops_the_whole_import() throws IOException {
    Path csv =
        file("history.csv", HEADER, "P-1,vasculogenic,1,0.2,1,1,3,45,exact,", "P-2,vasculogenic");

    Outcome outcome = run("import", csv, "--data", story, "--commit");

    assertThat(outcome.status()).isEqualTo(2);
    assertThat(outcome.out()).contains("0 patients");
  }

  @Test
  void what_cannot_be_meant_is_refused_with_what_to_do() throws IOException {
    assertThat(refused("import", "--data", story)).contains("Name either a file");
    assertThat(refused("import", "x.txt", "--data", story)).contains("must end in");
    assertThat(refused("import", top.resolve("no.csv"), "--data", story)).contains("no file");
    assertThat(refused("import", top.resolve("no.json"), "--data", empty)).contains("no file");
    assertThat(refused("import", file("b.json", "{}"), "--data", empty)).contains("line 1");
    assertThat(refused("export", "--data", story, "--to", top.resolve("x"))).contains("no form");
    assertThat(refused("export", "--data", story, "--to", file("there.csv"))).contains("already");
    assertThat(top.resolve("there.csv.part")).doesNotExist();
  }
}
