package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.app.Main;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.SamplePreparations;

final class DoseVerbTest {

  private static final String THREE_DRUG = "three-drug-30-1-10";
  private static final String WRITTEN_OUT =
      "papaverine hydrochloride=30 mg/mL, phentolamine mesylate=1 mg/mL, alprostadil=10 mcg/mL";

  /** What came of one run. */
  private record Run(int status, List<String> out, List<String> err) {}

  private static Run dose(String... options) {
    var out = new StringWriter();
    var err = new StringWriter();
    var arguments = new String[options.length + 1];
    arguments[0] = "dose";
    System.arraycopy(options, 0, arguments, 1, options.length);

    int status =
        RungwiseCommand.commandLine()
            .setOut(new PrintWriter(out, true))
            .setErr(new PrintWriter(err, true))
            .execute(arguments);

    return new Run(status, out.toString().lines().toList(), err.toString().lines().toList());
  }

  private static Run sample(String barrel, String how, String what) {
    return dose("--preparation", THREE_DRUG, "--barrel", barrel, how, what);
  }

  private static void assertRefused(Run run, String... faults) {
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).hasSameSizeAs(faults);
    for (int i = 0; i < faults.length; i++) {
      assertThat(run.err().get(i)).startsWith(faults[i]);
    }
  }

  @Test
  void the_volume_comes_first_then_the_mark_the_composition_and_the_content() {
    Run run = sample("u100-0.5", "--volume", "0.2mL");

    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out().getFirst())
        .isEqualTo(
            "0.2 mL (20-unit mark on a 0.5 mL U-100 syringe) of papaverine hydrochloride 30 mg,"
                + " phentolamine mesylate 1 mg, alprostadil 10 mcg per mL: papaverine 6 mg,"
                + " phentolamine 0.2 mg, alprostadil 2 mcg");
  }

  @ParameterizedTest
  @CsvSource({
    "--volume, 0.2mL",
    "--volume, 0.2 mL",
    "--volume, 0.2",
    "--mark, 20",
    "--content, alprostadil=2mcg",
    "--content, alprostadil=2 mcg",
    "--content, papaverine hydrochloride=6mg",
    "--content, Phentolamine Mesylate=0.2 mg",
  })
  void one_dose_is_the_same_however_it_was_asked_for(String how, String what) {
    assertThat(sample("u100-0.5", how, what)).isEqualTo(sample("u100-0.5", "--volume", "0.2mL"));
  }

  @Test
  void a_composition_that_is_written_out_gives_the_dose_of_the_sample() {
    Run run = dose("--composition", WRITTEN_OUT, "--barrel", "u100-0.5", "--volume", "0.2mL");

    assertThat(run).isEqualTo(sample("u100-0.5", "--volume", "0.2mL"));
  }

  @Test
  void a_short_name_in_a_composition_is_told_back_with_its_salt() {
    Run run =
        dose("--composition", "papaverine=30 mg/mL", "--barrel", "u100-0.5", "--volume", "0.2mL");

    assertThat(run.status()).isZero();
    assertThat(run.out())
        .contains("Note            \"papaverine\" was read as papaverine" + " hydrochloride.");
  }

  /** 2.5 percent is half of 0.01 mL in 0.2 mL; 0.0075 + 0.004 mL are 5.75 percent of 0.2 mL. */
  @Test
  void the_error_and_the_best_syringe_are_named() {
    Run run = sample("u100-0.5", "--volume", "0.2mL");

    assertThat(run.out())
        .contains(
            "Drawing error   up to 8.3 percent of this dose: half a line's distance and the"
                + " syringe's tolerance together",
            "Best read on    0.3 mL U-100 syringe with half-unit lines (--barrel u100-0.3-half)");
    assertThat(run.out()).noneMatch(line -> line.startsWith("Warning"));
  }

  @Test
  void a_content_between_two_lines_is_rounded_down_and_the_reader_is_told() {
    Run run =
        dose(
            "--preparation",
            "alprostadil-20",
            "--barrel",
            "u100-0.3",
            "--content",
            "alprostadil=1.25mcg");

    assertThat(run.status()).isZero();
    assertThat(run.out().getFirst())
        .isEqualTo(
            "0.06 mL (6-unit mark on a 0.3 mL U-100 syringe) of alprostadil 20 mcg per mL:"
                + " alprostadil 1.2 mcg");
    assertThat(run.out())
        .contains(
            "Note            1.25 mcg of alprostadil would be 0.0625 mL, between two lines: rounded"
                + " down to 0.06 mL, which holds alprostadil 1.2 mcg.");
  }

  @Test
  void zeros_at_the_end_are_read_with_a_note() {
    Run run = sample("u100-0.5", "--volume", "0.20mL");

    assertThat(run.status()).isZero();
    assertThat(run.out())
        .contains(
            "Note            \"0.20mL\" was read as 0.2 mL: leave out zeros at the end, because a"
                + " missed point makes ten times as much");
  }

  @Test
  void a_dose_that_is_hard_to_draw_is_answered_with_a_warning() {
    Run small = sample("u100-1", "--volume", "0.05mL");

    assertThat(small.status()).isZero();
    assertThat(small.out()).filteredOn(line -> line.startsWith("Warning")).hasSize(2);
  }

  @Test
  void a_syringe_marked_in_millilitres_shows_its_line() {
    Run run = sample("ml-1", "--volume", "0.25mL");

    assertThat(run.out().getFirst())
        .startsWith("0.25 mL (0.25 mL line on a 1 mL syringe marked in mL) of ");
  }

  @Test
  void the_same_answer_is_given_to_a_program() {
    Run run =
        dose(
            "--preparation",
            "alprostadil-20",
            "--barrel",
            "u100-0.5",
            "--content",
            "alprostadil=2.5mcg",
            "--json");

    assertThat(run.status()).isZero();
    assertThat(run.out()).hasSize(1);
    assertThat(run.out().getFirst())
        .startsWith(
            "{\"dose\":\"0.12 mL (12-unit mark on a 0.5 mL U-100 syringe) of alprostadil 20 mcg per"
                + " mL: alprostadil 2.4 mcg\",\"volume_ml\":0.12,"
                + "\"mark\":\"12-unit mark on a 0.5 mL U-100 syringe\",\"mark_units\":12,"
                + "\"barrel\":{\"token\":\"u100-0.5\",\"name\":\"0.5 mL U-100 syringe\","
                + "\"capacity_ml\":0.5,\"graduation_ml\":0.01},"
                + "\"preparation\":{\"id\":\"alprostadil-20\","
                + "\"composition\":\"alprostadil 20 mcg per mL\","
                + "\"components\":[{\"component\":\"alprostadil\",\"name\":\"alprostadil\","
                + "\"unit\":\"mcg\",\"per_ml\":20,\"content\":2.4}]},")
        .contains("\"smallest_barrel\":{\"token\":\"u100-0.3-half\",")
        .contains("\"rounded_down\":true,\"exact_volume_ml\":0.125,")
        .contains("\"notices\":[\"2.5 mcg of alprostadil would be 0.125 mL, between two lines:")
        .endsWith("No safety checks of a patient were made.\"]}");
  }

  @Test
  void numbers_for_a_program_keep_their_digits() {
    Run run =
        dose(
            "--composition",
            "papaverine hydrochloride=17.65 mg/mL, alprostadil=3 mcg/mL",
            "--barrel",
            "u100-1",
            "--content",
            "alprostadil=1mcg",
            "--json");

    assertThat(run.out().getFirst())
        .contains("\"volume_ml\":0.33,\"mark\":\"33-unit mark on a 1 mL U-100 syringe\"")
        .contains("\"per_ml\":17.65,\"content\":5.8245}")
        .contains("\"exact_volume_ml\":0.3333333333333333,")
        .contains("\"reading_percent\":1.5151515151515151,");
  }

  @Test
  void a_program_is_told_that_a_syringe_marked_in_millilitres_has_no_unit_mark() {
    Run run = dose("--preparation", THREE_DRUG, "--barrel", "ml-1", "--volume", "0.25mL", "--json");

    assertThat(run.out().getFirst())
        .contains("\"mark\":\"0.25 mL line on a 1 mL syringe marked in mL\",\"mark_units\":null,");
  }

  @Test
  void every_fault_of_a_request_is_told_at_once() {
    Run run = dose("--preparation", "x", "--barrel", "y", "--volume", ".5");

    assertRefused(
        run,
        "\"x\" is not a preparation known here: give one of alprostadil-20 (",
        "\"y\" is not a syringe known here: give one of u100-0.3-half (",
        "\".5\" is not a volume in mL: write a zero before the point, 0.5 mL; ");
    assertThat(run.err().get(0))
        .contains(
            SamplePreparations.all().stream().map(one -> one.id().value()).toArray(String[]::new));
    assertThat(run.err().get(1))
        .contains(
            Barrels.all().stream()
                .filter(one -> one.marking().graduationVolume().isPresent())
                .map(one -> one.token() + " (" + one + ")")
                .toArray(String[]::new))
        .doesNotContain("cartridge");
  }

  @Test
  void nothing_given_is_refused_with_what_to_give() {
    assertRefused(
        dose(),
        "No preparation was given: give --preparation or --composition.",
        "No syringe was given: give --barrel with one of u100-0.3-half (",
        "No dose was given: give one of --volume (such as 0.2mL), --mark (such as 20) or --content"
            + " (such as alprostadil=2.5mcg).");
  }

  @Test
  void two_ways_of_saying_one_thing_are_refused() {
    Run run =
        dose(
            "--preparation",
            THREE_DRUG,
            "--composition",
            WRITTEN_OUT,
            "--barrel",
            "u100-0.5",
            "--volume",
            "0.2mL",
            "--mark",
            "20",
            "--content",
            "alprostadil=2mcg");

    assertRefused(
        run,
        "Both --preparation and --composition were given: give one of them.",
        "--volume and --mark and --content were given together: give one of ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--volume|20 units|\"20 units\" is not a volume in mL: a syringe's units are marks",
        "--volume|0.2cc|\"0.2cc\" is not a volume in mL: \"cc\" is misread",
        "--volume|2e-1|\"2e-1\" is not a volume in mL: powers of ten are not read",
        "--mark|20 units|\"20 units\" is not the number of a syringe line: write only the number",
        "--mark|0.2mL|\"0.2mL\" is not the number of a syringe line: that is a volume",
        "--content|2.5mcg|\"2.5mcg\" is not a component with a mass: write it such as alprostadil",
        "--content|alprostadil=2.5|\"2.5\" is not a mass in mcg or mg: the unit is missing",
        "--content|alprostadil=10 \u00B5g|\"10 \u00B5g\" is not a mass in mcg or mg: the micro sign",
        "--content|heparin=1mg|\"heparin\" is not a component known here: give one of papaverine",
        "--content|atropine=1mg|There is no atropine sulfate in Three-drug mixture 30/1/10 (",
      })
  void a_dose_that_cannot_be_read_is_refused(String how, String what, String fault) {
    assertRefused(sample("u100-0.5", how, what), fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "u100-0.5|--volume|0.125mL|0.125 mL stands on no line of a 0.5 mL U-100 syringe: its lines"
            + " are 0.01 mL apart and end at 0.5 mL. The line below is 0.12 mL (12-unit mark on a"
            + " 0.5 mL U-100 syringe). A line there is on: u100-0.3-half (0.3 mL U-100 syringe with"
            + " half-unit lines).",
        "u100-0.3|--volume|0.31mL|0.31 mL stands on no line of a 0.3 mL U-100 syringe: its lines are"
            + " 0.01 mL apart and end at 0.3 mL. A line there is on: u100-0.5 (0.5 mL U-100"
            + " syringe), u100-1 (1 mL U-100 syringe), ml-1 (1 mL syringe marked in mL).",
        "u100-1-two|--mark|13|The 13-unit mark stands on no line of a 1 mL U-100 syringe with"
            + " two-unit lines: its lines are 0.02 mL apart and end at 1 mL. The line below is 0.12"
            + " mL (12-unit mark on a 1 mL U-100 syringe with two-unit lines). A line there is on: ",
        "u100-1|--content|alprostadil=11mcg|11 mcg of alprostadil, which is 1.1 mL, stands on no"
            + " line of a 1 mL U-100 syringe: its lines are 0.01 mL apart and end at 1 mL. No"
            + " syringe known here has a line there: ask for another dose or preparation.",
        "ml-1|--mark|20|A 1 mL syringe marked in mL has no unit marks: give the volume in mL, or"
            + " another syringe.",
        "cartridge-1|--volume|0.2mL|No line of a 1 mL cartridge device is known here: give one of ",
        "prefilled-0.5|--mark|20|No line of a 0.5 mL prefilled syringe is known here: give one of ",
      })
  void a_dose_without_a_line_is_refused_with_the_lines_there_are(
      String barrel, String how, String what, String fault) {
    assertRefused(sample(barrel, how, what), fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|\"\" is not a component with its strength: write it such as papaverine hydrochloride=30",
        "alprostadil 20|\"alprostadil 20\" is not a component with its strength: write it such as",
        "alprostadil=20|\"20\" is not a strength in mcg/mL or mg/mL: the unit is missing",
        "alprostadil=20 mcg|\"20 mcg\" is not a strength in mcg/mL or mg/mL: the volume is missing",
        "heparin=1 mg/mL|\"heparin\" is not a component known here: give one of papaverine",
        "alprostadil=20 mcg/mL, alprostadil=10 mcg/mL|alprostadil is entered twice: keep one.",
      })
  void a_composition_that_cannot_be_read_is_refused(String composition, String fault) {
    assertRefused(
        dose("--composition", composition, "--barrel", "u100-0.5", "--volume", "0.2mL"), fault);
  }

  @Test
  void every_part_of_a_composition_is_checked_before_it_is_refused() {
    assertRefused(
        dose(
            "--composition",
            "papaverine hydrochloride=30, heparin=1 mg/mL, alprostadil",
            "--barrel",
            "u100-0.5",
            "--volume",
            "0.2mL"),
        "\"30\" is not a strength",
        "\"heparin\" is not a component known here",
        "\"alprostadil\" is not a component with its strength");
  }

  @Test
  void a_dose_that_no_signature_could_open_is_refused() {
    assertRefused(
        sample("u100-0.5", "--volume", "0.01mL"),
        "0.01 mL (1-unit mark on a 0.5 mL U-100 syringe) is not a dose to order. This is below the"
            + " 2-unit mark");
    assertRefused(
        dose("--composition", "alprostadil=100 mcg/mL", "--barrel", "u100-1", "--volume", "0.61"),
        "0.61 mL (61-unit mark on a 1 mL U-100 syringe) is not a dose to order. This is above the"
            + " maximum dose. (maximum volume: 0.6 mL)",
        "0.61 mL (61-unit mark on a 1 mL U-100 syringe) is not a dose to order. This holds more of"
            + " a component than its limit. (this volume holds: alprostadil 61 mcg, limit: 60 mcg)");
    assertThat(
            dose("--composition", "alprostadil=100 mcg/mL", "--barrel", "u100-1", "--volume", "0.6")
                .status())
        .isZero();
  }

  @Test
  void a_word_that_is_no_option_is_refused_with_where_to_look() {
    Run run = dose("--dosis", "1");

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).anyMatch(line -> line.contains("--dosis"));
    assertThat(run.err().getLast()).isEqualTo("Try 'rungwise dose --help'.");
  }

  @Test
  void the_verb_loads_no_class_of_the_server() throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load:stdout",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "dose",
                "--preparation",
                THREE_DRUG,
                "--barrel",
                "u100-0.5",
                "--volume",
                "0.2mL",
                "--json")
            .redirectErrorStream(true)
            .start();

    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

    assertThat(process.waitFor()).isZero();
    assertThat(output)
        .contains("rungwise.app.verb.DoseVerb", "{\"dose\":\"0.2 mL (20-unit mark")
        .doesNotContain("org.springframework", "org.jooq", "org.apache.catalina", "org.sqlite");
  }
}
