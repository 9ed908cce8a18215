package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.files.PopulationFile;

/** The verb fit against reference/fit_scipy.txt, and what it refuses. */
final class FitVerbTest {

  private static final Path REFERENCE = Path.of("..", "reference");
  private static final String HISTORY = REFERENCE.resolve("fit").resolve("n60.csv.gz").toString();
  private static final String HEADER =
      "patient,group,injection,volume_ml,potency,strength,grade,duration_min,duration_status,"
          + "duration_upper_min\n";

  private static VerbRun fit(String... options) {
    return VerbRun.of("fit", options);
  }

  private static Path written(Path folder, String lines) throws IOException {
    Path file = folder.resolve("history.csv");
    Files.writeString(file, HEADER + lines, StandardCharsets.UTF_8);
    return file;
  }

  @Test
  void the_json_holds_what_scipy_finds() throws IOException {
    VerbRun run = fit(HISTORY, "--json");

    assertThat(run.status()).isZero();
    assertThat(run.err().getLast()).matches("Fitted in [0-9.]+ s\\.");
    assertThat(run.err().subList(0, run.err().size() - 1))
        .allMatch(line -> line.startsWith("Look "));
    for (String line :
        Files.readAllLines(REFERENCE.resolve("fit_scipy.txt"), StandardCharsets.UTF_8)) {
      String[] words = line.split(" ", -1);
      if (words[0].equals("n60") && words[1].equals("logLik")) {
        assertThat(numberAfter(run.out(), "\"logLik\":"))
            .isCloseTo(Double.parseDouble(words[2]), within(1e-6));
      } else if (words[0].equals("n60")) {
        String key = "\"" + words[1] + "\":{\"estimate\":";
        double estimate = numberAfter(run.out(), key);
        double error = numberAfter(run.out().substring(run.out().indexOf(key)), "\"se\":");
        assertThat(estimate).isCloseTo(Double.parseDouble(words[2]), within(1e-6));
        assertThat(error).isCloseTo(Double.parseDouble(words[3]), within(1e-6));
      }
    }
    assertThat(run.out())
        .startsWith("{\"parameters\":{\"mu\":{\"estimate\":")
        .contains("\"patients\":60,\"injections\":404,\"reference_group\":\"neurogenic\"")
        .contains("\"reference_group\":\"neurogenic\",\"groups\":{\"neurogenic\":")
        .contains("\"reference_preparation\":\"")
        .doesNotContain("doubts");
  }

  private static double numberAfter(String text, String key) {
    int from = text.indexOf(key) + key.length();
    int end = from;
    while ("+-.0123456789".indexOf(text.charAt(end)) >= 0) {
      end++;
    }
    return Double.parseDouble(text.substring(from, end));
  }

  @Test
  void the_json_is_a_population_that_forecasts_use(@TempDir Path folder) throws IOException {
    VerbRun fitted = fit(HISTORY, "--json", "--posterior", "--seed", "3");
    Path population = folder.resolve("clinic.json");
    Files.writeString(population, fitted.out(), StandardCharsets.UTF_8);

    PopulationFile file = PopulationFile.read(fitted.out()).orThrow();
    VerbRun forecast =
        VerbRun.of("forecast", HISTORY, "--population", population.toString(), "--volumes", "0.2");

    assertThat(file.referenceGroup()).isEqualTo("neurogenic");
    assertThat(file.population().gammas()).containsOnlyKeys("neurogenic", "vasculogenic");
    assertThat(file.population().meanOf("vasculogenic").orElseThrow())
        .isCloseTo(0.1037834656149991 + 0.6823566981483606, within(1e-6));
    assertThat(file.others()).containsKeys("logLik", "posterior", "covariance");
    assertThat(fitted.out()).contains("\"pareto_k\":");
    assertThat(fitted.err())
        .contains("Draw 5000 of at least 5000 from the posterior")
        .last()
        .asString()
        .matches("Fitted in .* s, drew .* in .* s: [0-9]+ independent draws a second at least\\.");
    assertThat(forecast.status()).isZero();
    assertThat(forecast.err()).isEmpty();
    assertThat(forecast.out()).contains("Patient P60:");
  }

  @Test
  void the_same_seed_draws_the_same_with_any_number_of_threads() {
    String one = fit(HISTORY, "--json", "--posterior", "--seed", "3", "--threads", "1").out();
    String two = fit(HISTORY, "--json", "--posterior", "--seed", "3", "--threads", "2").out();
    String other = fit(HISTORY, "--json", "--posterior", "--seed", "4", "--threads", "2").out();

    assertThat(two).isEqualTo(one);
    assertThat(other).isNotEqualTo(one);
  }

  /** The draws give the means and the spread that the answer tells, when another program adds. */
  @Test
  void the_draws_are_written_for_other_programs(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("draws.csv");
    VerbRun run = fit(HISTORY, "--draws", file.toString(), "--json", "--seed", "3");

    List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
    List<String> names = List.of(lines.getFirst().split(",", -1));
    double[][] rows =
        lines.stream()
            .skip(1)
            .map(line -> Arrays.stream(line.split(",", -1)).mapToDouble(Double::parseDouble))
            .map(DoubleStream::toArray)
            .toArray(double[][]::new);
    assertThat(run.status()).isZero();
    assertThat(names).startsWith("weight", "mu").contains("gamma.vasculogenic").hasSize(10);
    assertThat(rows.length).isGreaterThanOrEqualTo(5000);
    assertThat(Arrays.stream(rows).mapToDouble(row -> row[0]).sum()).isCloseTo(1, within(1e-9));
    String posterior = run.out().substring(run.out().indexOf("\"posterior\""));
    for (int i = 1; i < names.size(); i++) {
      int place = i;
      String known = posterior.substring(posterior.indexOf("\"" + names.get(i) + "\":{"));
      double mean = Arrays.stream(rows).mapToDouble(row -> row[0] * row[place]).sum();
      double below =
          Arrays.stream(rows)
              .filter(row -> row[place] < numberAfter(known, "\"0.95\":"))
              .mapToDouble(row -> row[0])
              .sum();
      assertThat(mean).as(names.get(i)).isCloseTo(numberAfter(known, "\"mean\":"), within(1e-9));
      assertThat(below).as(names.get(i)).isLessThan(0.95).isCloseTo(0.95, within(1e-3));
    }
    assertThat(fit(HISTORY, "--draws", file.toString()).err())
        .containsExactly("--draws: there is a file " + file + " already: give another name");
  }

  @Test
  void without_durations_there_is_nothing_to_draw_from(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("draws.csv");
    VerbRun run =
        fit(
            REFERENCE.resolve("fit").resolve("grades.csv.gz").toString(),
            "--draws",
            file.toString());

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err()).last().asString().startsWith("--draws: there is no posterior");
    assertThat(file).doesNotExist();
  }

  @Test
  void another_reference_group_moves_the_mean_and_nothing_else() {
    VerbRun run = fit(HISTORY, "--reference-group", "vasculogenic", "--json");

    assertThat(numberAfter(run.out(), "\"mu\":{\"estimate\":"))
        .isCloseTo(0.1037834656149991 + 0.6823566981483606, within(1e-6));
    assertThat(numberAfter(run.out(), "\"gamma.neurogenic\":{\"estimate\":"))
        .isCloseTo(-0.6823566981483606, within(1e-6));
  }

  @Test
  void a_reader_is_told_what_was_found_and_that_it_is_not_signed() {
    VerbRun run = fit(HISTORY, "--posterior");

    assertThat(run.status()).isZero();
    assertThat(run.out())
        .contains("60 patients, 404 injections.", "Reference group: neurogenic.", "not signed")
        .contains("posterior mean", "Nothing was found that speaks against");
    assertThat(run.out().lines().filter(line -> line.startsWith("  "))).hasSize(10);
  }

  @Test
  void what_makes_a_fit_doubtful_is_said_in_both_outputs(@TempDir Path folder) throws IOException {
    Path file =
        written(
            folder,
            """
            A,mixed,1,0.1,1,1,3,40,exact,
            A,mixed,2,0.2,1,1,4,70,exact,
            B,mixed,1,0.1,1,1,1,,none,
            B,mixed,2,0.3,1,1,2,,none,
            B,mixed,3,0.5,1,1,3,30,exact,
            """);

    VerbRun text = fit(file.toString());
    VerbRun json = fit(file.toString(), "--json");

    assertThat(text.status()).isEqualTo(3);
    assertThat(json.status()).isEqualTo(3);
    assertThat(text.out()).contains("Not to be signed:", "There are only 2 courses");
    assertThat(json.out()).contains("\"doubts\":[\"There are only 2 courses");
  }

  @Test
  void a_population_that_its_maker_doubts_is_used_only_when_told_and_says_so_everywhere(
      @TempDir Path folder) throws IOException {
    var lines = new StringBuilder();
    for (int man = 1; man <= 80; man++) {
      for (int injection = 1; injection <= 3; injection++) {
        lines.append("M").append(man).append(",mixed,").append(injection);
        lines.append(",0.1,1,1,4,40,exact,\n");
      }
    }
    String history = written(folder, lines.toString()).toString();
    VerbRun fitted = fit(history, "--json");
    Path population = folder.resolve("doubted.json");
    Files.writeString(population, fitted.out(), StandardCharsets.UTF_8);

    VerbRun refused = VerbRun.of("forecast", history, "--population", population.toString());
    VerbRun told =
        VerbRun.of("forecast", history, "--population", population.toString(), "--despite-doubts");
    VerbRun json =
        VerbRun.of(
            "forecast",
            history,
            "--population",
            population.toString(),
            "--despite-doubts",
            "--json");

    assertThat(fitted.status()).isEqualTo(3);
    assertThat(refused.status()).isEqualTo(2);
    assertThat(refused.out()).isEmpty();
    assertThat(refused.err().getFirst()).endsWith("or forecast with --despite-doubts");
    assertThat(refused.err()).anyMatch(line -> line.contains("No response has grade 1"));
    assertThat(told.status()).isEqualTo(3);
    assertThat(told.out())
        .contains("Not to be relied on, because the population is doubted:", "has grade 1");
    assertThat(json.status()).isEqualTo(3);
    assertThat(json.out()).contains("\"doubts\":[\"");
  }

  @Test
  void a_fit_is_of_one_preparation_or_of_what_is_chosen(@TempDir Path folder) throws IOException {
    var text = new StringBuilder(HEADER.strip()).append(",preparation\n");
    for (int man = 1; man <= 9; man++) {
      String preparation = man % 3 == 0 ? "three-drug" : "alprostadil-20";
      for (int injection = 1; injection <= 4; injection++) {
        text.append("M").append(man).append(",mixed,").append(injection).append(",0.");
        text.append(injection).append(",1,1,").append(injection).append(",");
        text.append(injection > 2 ? "40,exact,," : ",none,,").append(preparation).append('\n');
      }
    }
    Path file = folder.resolve("mixed.csv");
    Files.writeString(file, text, StandardCharsets.UTF_8);

    VerbRun both = fit(file.toString());
    VerbRun chosen = fit(file.toString(), "--preparation", "alprostadil-20", "--json");
    VerbRun forecast = VerbRun.of("forecast", file.toString(), "--volumes", "0.1");
    VerbRun ofIt =
        VerbRun.of("forecast", file.toString(), "--preparation", "alprostadil-20", "--json");

    assertThat(both.status()).isEqualTo(2);
    assertThat(both.err().getFirst())
        .startsWith("line 10: preparation: \"three-drug\" was given, and the model is asked about");
    assertThat(chosen.out())
        .contains("\"patients\":6,", "\"reference_preparation\":\"alprostadil-20\"")
        .contains("\"lines_left_out\":12");
    assertThat(forecast.status()).isEqualTo(2);
    assertThat(forecast.err()).hasSize(12);
    assertThat(ofIt.status()).isZero();
    assertThat(ofIt.out()).contains("\"lines_left_out\":12").doesNotContain("\"M3\"");
  }

  @Test
  void without_durations_only_the_part_of_grades_is_fitted() {
    VerbRun run = fit(REFERENCE.resolve("fit").resolve("grades.csv.gz").toString(), "--json");

    assertThat(run.status()).isEqualTo(3);
    assertThat(run.out()).contains("\"c4\":{", "\"doubts\":[\"No duration at grade 3 or 4");
    assertThat(run.out()).doesNotContain("\"tau\"");
    assertThat(PopulationFile.read(run.out()).faults()).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mixed,1,0.1,1,1,7,,none,|line 2: grade: \"7\" was given: write a grade from 0 to 4",
        "mixed,1,0.1,0,1,2,,none,|line 2: potency: \"0\" was given: write a number above 0, at",
        "mixed,1,0.1,1.3,1,2,,none,|line 2: potency: \"1.3\" was given",
        "mixed,1,-0.1,1,1,2,,none,|line 2: volume_ml: \"-0.1\" is not a volume in mL",
        "mixed,1,0.1,1,1|line 2: there are 6 values, and the header names 10: the file may have",
      })
  void bad_input_is_refused_with_its_line(String line, String fault, @TempDir Path folder)
      throws IOException {
    VerbRun run = fit(written(folder, "A," + line + "\n").toString());

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).singleElement().asString().startsWith(fault);
  }

  @Test
  void files_that_are_cut_or_not_packed_are_refused(@TempDir Path folder) throws IOException {
    byte[] whole = Files.readAllBytes(Path.of(HISTORY));
    Path cut = folder.resolve("cut.csv.gz");
    Files.write(cut, Arrays.copyOf(whole, whole.length / 2));
    Path plain = folder.resolve("plain.csv.gz");
    Files.writeString(plain, HEADER, StandardCharsets.UTF_8);

    for (Map.Entry<Path, String> one :
        Map.of(cut, "ends in the middle", plain, "is not packed with gzip").entrySet()) {
      VerbRun run = fit(one.getKey().toString(), "--json");

      assertThat(run.status()).isEqualTo(2);
      assertThat(run.out()).startsWith("{\"faults\":[\"line ");
      assertThat(run.err()).singleElement().asString().contains("line ", one.getValue());
    }
    assertThat(folder).isDirectoryNotContaining(file -> file.toString().endsWith(".json"));
  }

  @Test
  void what_cannot_be_fitted_is_refused_in_words(@TempDir Path folder) throws IOException {
    Path one = written(folder, "A,mixed,1,0.1,1,1,3,40,exact,\n");

    assertThat(fit(one.toString()).err())
        .singleElement()
        .asString()
        .contains("there is 1 patient in the file: a fit needs 2");
    assertThat(fit(one.toString()).status()).isEqualTo(2);
    assertThat(fit(HISTORY, "--reference-group", "rare").err())
        .containsExactly(
            "--reference-group: \"rare\" was given, which the file does not hold: it holds"
                + " [neurogenic, vasculogenic]");
    assertThat(fit(HISTORY, "--threads", "0").err().getFirst()).startsWith("--threads: \"0\"");
    assertThat(fit().err()).containsExactly("No history was given: give a .csv or .csv.gz file.");
    assertThat(fit("none.csv").err().getFirst()).startsWith("There is no file none.csv");
    assertThat(fit("none.csv").status()).isEqualTo(2);
    assertThat(fit(written(folder, "").toString()).err().getFirst()).startsWith("line 2: there is");
  }
}
