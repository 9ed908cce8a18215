package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.syringe.Barrels;

/** What the dose verb refuses, and what it says then. */
final class DoseVerbRefusalTest {

  private static final String WRITTEN_OUT =
      "papaverine hydrochloride=30 mg/mL, phentolamine mesylate=1 mg/mL, alprostadil=10 mcg/mL";

  @Test
  void every_fault_of_a_request_is_told_at_once() {
    DoseRun run = DoseRun.dose("--preparation", "x", "--barrel", "y", "--volume", ".5");

    run.assertRefused(
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
    DoseRun.dose()
        .assertRefused(
            "No preparation was given: give --preparation or --composition.",
            "No syringe was given: give --barrel with one of u100-0.3-half (",
            "No dose was given: give one of --volume (such as 0.2mL), --mark (such as 20)"
                + " or --content"
                + " (such as alprostadil=2.5mcg).");
  }

  @Test
  void two_ways_of_saying_one_thing_are_refused() {
    DoseRun run =
        DoseRun.dose(
            "--preparation",
            DoseRun.THREE_DRUG,
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

    run.assertRefused(
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
        "--content|alprostadil=10 \u00B5g|\"10 \u00B5g\" is not a mass in mcg or mg: the micro"
            + " sign",
        "--content|heparin=1mg|\"heparin\" is not a component known here: give one of papaverine",
        "--content|atropine=1mg|There is no atropine sulfate in Three-drug mixture 30/1/10 (",
      })
  void a_dose_that_cannot_be_read_is_refused(String how, String what, String fault) {
    DoseRun.sample("u100-0.5", how, what).assertRefused(fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "u100-0.5|--volume|0.125mL|0.125 mL stands on no line of a 0.5 mL U-100 syringe: its lines"
            + " are 0.01 mL apart and end at 0.5 mL. The line below is 0.12 mL (12-unit mark on a"
            + " 0.5 mL U-100 syringe). A line there is on: u100-0.3-half (0.3 mL U-100 syringe with"
            + " half-unit lines).",
        "u100-0.3|--volume|0.31mL|0.31 mL stands on no line of a 0.3 mL U-100 syringe: its lines"
            + " are"
            + " 0.01 mL apart and end at 0.3 mL. A line there is on: u100-0.5 (0.5 mL U-100"
            + " syringe), u100-1 (1 mL U-100 syringe), ml-1 (1 mL syringe marked in mL).",
        "u100-1-two|--mark|13|The 13-unit mark stands on no line of a 1 mL U-100 syringe with"
            + " two-unit lines: its lines are 0.02 mL apart and end at 1 mL. The line below is 0.12"
            + " mL (12-unit mark on a 1 mL U-100 syringe with two-unit lines). A line there is"
            + " on: ",
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
    DoseRun.sample(barrel, how, what).assertRefused(fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|\"\" is not a component with its strength: write it such as papaverine"
            + " hydrochloride=30",
        "alprostadil 20|\"alprostadil 20\" is not a component with its strength: write it such as",
        "alprostadil=20|\"20\" is not a strength in mcg/mL or mg/mL: the unit is missing",
        "alprostadil=20 mcg|\"20 mcg\" is not a strength in mcg/mL or mg/mL: the volume is missing",
        "heparin=1 mg/mL|\"heparin\" is not a component known here: give one of papaverine",
        "alprostadil=20 mcg/mL, alprostadil=10 mcg/mL|alprostadil is entered twice: keep one.",
      })
  void a_composition_that_cannot_be_read_is_refused(String composition, String fault) {
    DoseRun.dose("--composition", composition, "--barrel", "u100-0.5", "--volume", "0.2mL")
        .assertRefused(fault);
  }

  @Test
  void every_part_of_a_composition_is_checked_before_it_is_refused() {
    DoseRun.dose(
            "--composition",
            "papaverine hydrochloride=30, heparin=1 mg/mL, alprostadil",
            "--barrel",
            "u100-0.5",
            "--volume",
            "0.2mL")
        .assertRefused(
            "\"30\" is not a strength",
            "\"heparin\" is not a component known here",
            "\"alprostadil\" is not a component with its strength");
  }

  @Test
  void a_dose_that_no_signature_could_open_is_refused() {
    DoseRun.sample("u100-0.5", "--volume", "0.01mL")
        .assertRefused(
            "0.01 mL (1-unit mark on a 0.5 mL U-100 syringe) is not a dose to order. This"
                + " is below the"
                + " 2-unit mark");
    DoseRun.dose(
            "--composition", "alprostadil=100 mcg/mL", "--barrel", "u100-1", "--volume", "0.61")
        .assertRefused(
            "0.61 mL (61-unit mark on a 1 mL U-100 syringe) is not a dose to order. This is"
                + " above the"
                + " maximum dose. (maximum volume: 0.6 mL)",
            "0.61 mL (61-unit mark on a 1 mL U-100 syringe) is not a dose to order. This"
                + " holds more of"
                + " a component than its limit. (this volume holds: alprostadil 61 mcg,"
                + " limit: 60 mcg)");
    assertThat(
            DoseRun.dose(
                    "--composition",
                    "alprostadil=100 mcg/mL",
                    "--barrel",
                    "u100-1",
                    "--volume",
                    "0.6")
                .status())
        .isZero();
  }

  @Test
  void a_word_that_is_no_option_is_refused_with_where_to_look() {
    DoseRun run = DoseRun.dose("--dosis", "1");

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).anyMatch(line -> line.contains("--dosis"));
    assertThat(run.err().getLast()).isEqualTo("Try 'rungwise dose --help'.");
  }
}
