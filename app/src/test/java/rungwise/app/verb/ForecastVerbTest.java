package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The verb forecast against reference/example.py, and what it refuses. */
final class ForecastVerbTest {

  private static final Path REFERENCE = Path.of("..", "reference");
  private static final String HISTORY = REFERENCE.resolve("example.csv").toString();
  private static final String POPULATION = REFERENCE.resolve("example-population.json").toString();

  private static final Pattern PATIENT =
      Pattern.compile("\"patient\":\"(\\w)\",\"eta\":\\{\"mean\":([-\\d.]+),\"sd\":([\\d.]+)}");
  private static final Pattern LINE =
      Pattern.compile(
          "\\{\"volume_ml\":([\\d.]+),\"p_useful\":([\\d.]+),\"p_useful_ge60\":([\\d.]+),"
              + "\"p_useful_ge120\":([\\d.]+),\"p_useful_ge240\":([\\d.]+)[,}]");

  private static VerbRun forecast(String... options) {
    return VerbRun.of("forecast", options);
  }

  private static List<double[]> expected(String patient) throws IOException {
    return Files.readAllLines(REFERENCE.resolve("example-forecast.txt"), StandardCharsets.UTF_8)
        .stream()
        .filter(line -> line.startsWith(patient + " "))
        .map(line -> Arrays.stream(line.split(" ", -1)).skip(1).mapToDouble(Double::parseDouble))
        .map(java.util.stream.DoubleStream::toArray)
        .toList();
  }

  private static double[] groups(Matcher matcher, int from) {
    double[] numbers = new double[matcher.groupCount() - from + 1];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = Double.parseDouble(matcher.group(from + i));
    }
    return numbers;
  }

  @Test
  void each_patient_has_the_probabilities_of_dense_sums() throws IOException {
    VerbRun run = forecast(HISTORY, "--population", POPULATION, "--json");

    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).startsWith("{\"notice\":\"no safety checks were made\",\"patients\":[{");
    String[] patients = run.out().split("(?=\\{\"patient\")", -1);
    assertThat(patients).hasSize(4);
    for (String name : List.of("A", "B", "C")) {
      String text = patients["ABC".indexOf(name) + 1];
      List<double[]> rows = expected(name);
      Matcher head = PATIENT.matcher(text);
      assertThat(head.find()).isTrue();
      assertThat(head.group(1)).isEqualTo(name);
      // The bound that the design sets for a probability.
      assertThat(groups(head, 2)).containsExactly(rows.getFirst(), within(1e-8));
      List<double[]> lines = LINE.matcher(text).results().map(ForecastVerbTest::numbers).toList();
      assertThat(lines).hasSize(10);
      for (int i = 0; i < lines.size(); i++) {
        assertThat(lines.get(i)).containsExactly(rows.get(i + 1), within(1e-8));
      }
    }
  }

  private static double[] numbers(java.util.regex.MatchResult result) {
    double[] numbers = new double[result.groupCount()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = Double.parseDouble(result.group(i + 1));
    }
    return numbers;
  }

  /** The sums of reference/example_delivery.py, by another rule than the program's. */
  @Test
  void with_a_syringe_the_chances_are_averaged_over_what_may_be_delivered() throws IOException {
    VerbRun run =
        forecast(
            HISTORY,
            "--population",
            POPULATION,
            "--delivery",
            "u100-0.5",
            "--lost",
            "0.15",
            "--volumes",
            "0.05,0.2,0.35",
            "--json");

    List<double[]> lines =
        LINE.matcher(run.out()).results().map(ForecastVerbTest::numbers).toList();
    List<double[]> rows =
        Files.readAllLines(REFERENCE.resolve("example-delivery.txt"), StandardCharsets.UTF_8)
            .stream()
            .filter(line -> !line.startsWith("#"))
            .map(line -> Arrays.stream(line.split(" ", -1)).skip(1))
            .map(words -> words.mapToDouble(Double::parseDouble).toArray())
            .toList();
    assertThat(lines).hasSameSizeAs(rows).hasSize(9);
    for (int i = 0; i < rows.size(); i++) {
      // The bound that the design sets for a probability.
      assertThat(lines.get(i)).containsExactly(rows.get(i), within(1e-8));
    }
    // 0.2 mL in 0.5 mL: half a line is 0.005 mL, ISO 7886-1 lets 0.0075 + 0.004 mL pass.
    assertThat(run.out())
        .contains("\"reading\":0.025,\"barrel\":0.0575,\"label\":0.1,\"lost_at_most\":0.15");
  }

  @Test
  void a_reader_sees_the_error_budget_below_each_volume() {
    VerbRun run = forecast(HISTORY, "--volumes", "0.2", "--delivery", "u100-0.5", "--lost", "0.15");

    assertThat(run.out())
        .contains("no safety checks were made", "the same averaged over what may be delivered")
        .contains("reading 2.5, barrel 5.8, label 10.0 either way, lost up to 15.0: between");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--delivery=none|--delivery: \"none\" is no syringe with lines: give one of u100-0.3-half",
        "--delivery=cartridge-1|--delivery: \"cartridge-1\" is no syringe with lines",
        "--lost=0.1|--lost was given without a syringe: give --delivery too",
        "--delivery=u100-0.3|--volumes: 0.35 mL is on no line of a 0.3 mL U-100 syringe",
        "--delivery=u100-1-two --lost=1|--lost: \"1\" was given: write a part of 1, below 1",
      })
  void a_delivery_that_cannot_be_is_refused_with_what_to_give(String options, String fault) {
    String[] all = (HISTORY + " --volumes 0.2,0.35 " + options).split(" ", -1);

    VerbRun run = forecast(all);

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).anyMatch(line -> line.startsWith(fault));
  }

  @Test
  void a_volume_that_nobody_can_measure_has_no_error_budget() {
    VerbRun run = forecast(HISTORY, "--volumes", "0.02", "--delivery", "u100-1");

    assertThat(run.err())
        .singleElement()
        .asString()
        .startsWith("--volumes: the drawing error of 0.02 mL in a 1 mL U-100 syringe is as large");
  }

  @Test
  void potency_and_strength_multiply_the_volume() {
    VerbRun half = forecast(HISTORY, "--volumes", "0.4", "--potency", "0.5", "--json");
    VerbRun whole = forecast(HISTORY, "--volumes", "0.2", "--json");
    VerbRun double_ = forecast(HISTORY, "--volumes", "0.1", "--strength", "2", "--json");

    assertThat(half.out().replace("\"volume_ml\":0.4", "\"volume_ml\":0.2")).isEqualTo(whole.out());
    assertThat(double_.out().replace("\"volume_ml\":0.1", "\"volume_ml\":0.2"))
        .isEqualTo(whole.out());
  }

  @Test
  void a_reader_is_told_that_nothing_was_checked_and_by_what_population() {
    VerbRun run = forecast(HISTORY, "--volumes", "0.1,0.2");

    assertThat(run.status()).isZero();
    assertThat(run.out().lines().toList().getFirst()).contains("no safety checks were made");
    assertThat(run.out())
        .contains("Population: alprostadil-published version 1.")
        .contains("Patient C:");
    assertThat(run.out().lines().filter(line -> line.startsWith("  0.2 mL"))).hasSize(3);
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
        "rare,1,0.1,1,1,2,,none,|line 2: group: \"rare\" was given, which the population does not",
      })
  void bad_input_is_refused_with_its_line(String line, String fault, @TempDir Path folder)
      throws IOException {
    Path file = folder.resolve("history.csv");
    String header = Files.readAllLines(Path.of(HISTORY), StandardCharsets.UTF_8).getFirst();
    Files.writeString(file, header + "\nA," + line + "\n", StandardCharsets.UTF_8);

    VerbRun run = forecast(file.toString());

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).singleElement().asString().startsWith(fault);
  }

  @Test
  void a_file_whose_name_says_packed_and_that_is_not_is_refused(@TempDir Path folder)
      throws IOException {
    Path file = folder.resolve("history.csv.gz");
    Files.copy(Path.of(HISTORY), file);

    VerbRun run = forecast(file.toString(), "--json");

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err())
        .singleElement()
        .asString()
        .contains("line 1: ", "is not packed with gzip");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--volumes|0.1:0.5|--volumes 0.1:0.5: write from, to and step in mL",
        "--volumes|0.5:0.1:0.1|--volumes 0.5:0.1:0.1 begin above their end",
        "--volumes|5|--volumes 5: no syringe holds more than 1 mL: write from, to and step",
        "--volumes|0.1cc|--volumes: \"0.1cc\" is not a volume in mL",
        "--potency|0|--potency: \"0\" was given: write a number above 0, at most 1.2",
        "--potency|1.3|--potency: \"1.3\" was given",
        "--strength|-1|--strength: \"-1\" was given",
        "--strength|30|--strength: \"30\" was given: write a number from 0.05 to 20",
        "--population|none.json|There is no population file none.json: give a path, or one of",
      })
  void a_wrong_option_is_refused_with_what_to_write(String option, String text, String fault) {
    VerbRun run = forecast(HISTORY, option + "=" + text);

    assertThat(run.status()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).singleElement().asString().startsWith(fault);
  }

  @Test
  void no_history_or_none_that_is_there_is_refused() {
    assertThat(forecast().err())
        .containsExactly(
            "Give either a history, a .csv or .csv.gz file, or --group with the name of a group.");
    assertThat(forecast("none.csv").err().getFirst()).startsWith("There is no file none.csv");
    assertThat(forecast("none.csv").status()).isEqualTo(2);
  }
}
