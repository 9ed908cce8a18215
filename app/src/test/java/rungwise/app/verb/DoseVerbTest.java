package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.app.Main;

final class DoseVerbTest {

  private static final String WRITTEN_OUT =
      "papaverine hydrochloride=30 mg/mL, phentolamine mesylate=1 mg/mL, alprostadil=10 mcg/mL";

  @Test
  void the_volume_comes_first_then_the_mark_the_composition_and_the_content() {
    DoseRun run = DoseRun.sample("u100-0.5", "--volume", "0.2mL");

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
    assertThat(DoseRun.sample("u100-0.5", how, what))
        .isEqualTo(DoseRun.sample("u100-0.5", "--volume", "0.2mL"));
  }

  @Test
  void a_composition_that_is_written_out_gives_the_dose_of_the_sample() {
    DoseRun run =
        DoseRun.dose("--composition", WRITTEN_OUT, "--barrel", "u100-0.5", "--volume", "0.2mL");

    assertThat(run).isEqualTo(DoseRun.sample("u100-0.5", "--volume", "0.2mL"));
  }

  @Test
  void a_short_name_in_a_composition_is_told_back_with_its_salt() {
    DoseRun run =
        DoseRun.dose(
            "--composition", "papaverine=30 mg/mL", "--barrel", "u100-0.5", "--volume", "0.2mL");

    assertThat(run.status()).isZero();
    assertThat(run.out())
        .contains("Note            \"papaverine\" was read as papaverine" + " hydrochloride.");
  }

  /** 2.5 percent is half of 0.01 mL in 0.2 mL; 0.0075 + 0.004 mL are 5.75 percent of 0.2 mL. */
  @Test
  void the_error_and_the_best_syringe_are_named() {
    DoseRun run = DoseRun.sample("u100-0.5", "--volume", "0.2mL");

    assertThat(run.out())
        .contains(
            "Drawing error   up to 8.3 percent of this dose: half a line's distance and the"
                + " syringe's tolerance together",
            "Best read on    0.3 mL U-100 syringe with half-unit lines (--barrel u100-0.3-half)");
    assertThat(run.out()).noneMatch(line -> line.startsWith("Warning"));
  }

  @Test
  void a_content_between_two_lines_is_rounded_down_and_the_reader_is_told() {
    DoseRun run =
        DoseRun.dose(
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
    DoseRun run = DoseRun.sample("u100-0.5", "--volume", "0.20mL");

    assertThat(run.status()).isZero();
    assertThat(run.out())
        .contains(
            "Note            \"0.20mL\" was read as 0.2 mL: leave out zeros at the end, because a"
                + " missed point makes ten times as much");
  }

  @Test
  void a_dose_that_is_hard_to_draw_is_answered_with_a_warning() {
    DoseRun small = DoseRun.sample("u100-1", "--volume", "0.05mL");

    assertThat(small.status()).isZero();
    assertThat(small.out()).filteredOn(line -> line.startsWith("Warning")).hasSize(2);
  }

  @Test
  void a_syringe_marked_in_millilitres_shows_its_line() {
    DoseRun run = DoseRun.sample("ml-1", "--volume", "0.25mL");

    assertThat(run.out().getFirst())
        .startsWith("0.25 mL (0.25 mL line on a 1 mL syringe marked in mL) of ");
  }

  @Test
  void the_same_answer_is_given_to_a_program() {
    DoseRun run =
        DoseRun.dose(
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
    DoseRun run =
        DoseRun.dose(
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
    DoseRun run =
        DoseRun.dose(
            "--preparation",
            DoseRun.THREE_DRUG,
            "--barrel",
            "ml-1",
            "--volume",
            "0.25mL",
            "--json");

    assertThat(run.out().getFirst())
        .contains("\"mark\":\"0.25 mL line on a 1 mL syringe marked in mL\",\"mark_units\":null,");
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
                DoseRun.THREE_DRUG,
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
