package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;
import rungwise.files.history.HistoryFile;

/** What other programs read of forecast and fit, held to docs/schemas (JSON Schema 2020-12). */
final class VerbAnswersTest {

  private static final Path REFERENCE = Path.of("..", "reference");
  private static final String HISTORY = REFERENCE.resolve("example.csv").toString();
  private static final String POPULATION = REFERENCE.resolve("example-population.json").toString();
  private static final Path COURSES = REFERENCE.resolve("fit").resolve("n60.csv.gz");

  private static final String HEADER =
      "patient,group,injection,volume_ml,potency,strength,grade,duration_min,duration_status,"
          + "duration_upper_min\n";

  private static VerbRun runWith(byte[] input, String... arguments) {
    InputStream before = System.in;
    System.setIn(new ByteArrayInputStream(input));
    try {
      return VerbRun.of(arguments);
    } finally {
      System.setIn(before);
    }
  }

  private static List<String> faults(String schema, String json) {
    try {
      Schema read =
          SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
              .getSchema(
                  Files.readString(
                      Path.of("..", "docs", "schemas", schema + ".schema.json"),
                      StandardCharsets.UTF_8),
                  InputFormat.JSON);
      return read.validate(json, InputFormat.JSON).stream().map(Error::toString).toList();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void each_forecast_is_as_its_schema_says() {
    for (String[] asked :
        new String[][] {
          {"forecast", HISTORY, "--population", POPULATION, "--json"},
          {"forecast", HISTORY, "--population", POPULATION, "--delivery", "u100-0.5", "--json"},
          {"forecast", "--group", "spinal_cord", "--json"}
        }) {
      VerbRun run = VerbRun.of(asked);

      assertThat(run.err()).isEmpty();
      assertThat(faults("forecast", run.out())).isEmpty();
    }
  }

  @Test
  void each_fit_is_as_its_schema_says() {
    assertThat(faults("fit", VerbRun.of("fit", COURSES.toString(), "--json").out())).isEmpty();
    assertThat(faults("fit", VerbRun.of("fit", COURSES.toString(), "--posterior", "--json").out()))
        .isEmpty();
    VerbRun checked = VerbRun.of("fit", COURSES.toString(), "--check", "--json");
    assertThat(checked.out()).contains("\"check\":{\"patients\":60,");
    assertThat(faults("fit", checked.out())).isEmpty();
    VerbRun doubted =
        VerbRun.of("fit", REFERENCE.resolve("fit").resolve("grades.csv.gz").toString(), "--json");
    assertThat(doubted.status()).isEqualTo(RungwiseCommand.NOT_TO_BE_RELIED_ON);
    assertThat(faults("fit", doubted.out())).isEmpty();
  }

  /** 30 lines are wrong: a reader sees 20 and the counts, a program all of them. */
  @Test
  void many_faults_are_shown_in_part_and_counted_and_a_program_gets_all(@TempDir Path folder)
      throws IOException {
    var text = new StringBuilder(HEADER);
    for (int i = 1; i <= 30; i++) {
      text.append("A,mixed,").append(i).append(i % 3 == 0 ? ",9" : ",0.1").append(",1,1,");
      text.append(i % 3 == 0 ? "2" : "7").append(",,none,\n");
    }
    Path file = Files.writeString(folder.resolve("wrong.csv"), text, StandardCharsets.UTF_8);
    for (String verb : List.of("fit", "forecast")) {
      VerbRun words = VerbRun.of(verb, file.toString());
      VerbRun document = VerbRun.of(verb, file.toString(), "--json");

      assertThat(words.status()).isEqualTo(2);
      assertThat(words.out()).isEmpty();
      assertThat(words.err()).hasSize(21);
      assertThat(words.err().getLast())
          .isEqualTo(
              "These are 20 of 30 faults, by column: grade 20, volume_ml 10. --json lists each.");
      assertThat(document.status()).isEqualTo(2);
      assertThat(document.err()).isEqualTo(words.err());
      assertThat(faults("refused", document.out())).isEmpty();
      assertThat(document.out().split("\"line ", -1)).hasSize(31);
      assertThat(document.out()).contains("\"faults_by_column\":{\"grade\":20,\"volume_ml\":10}");
    }
  }

  /** Neither takes nothing for 1, and both say so in the same words. */
  @Test
  void an_empty_strength_is_not_known_to_a_fit_and_to_an_import_alike(@TempDir Path folder)
      throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("unknown.csv"),
            HEADER + "A,mixed,1,0.1,1,,2,,none,\nB,mixed,1,0.1,1,1,2,,none,\n",
            StandardCharsets.UTF_8);

    String said = "line 2: strength: nothing was given, so it is not known: write it";
    assertThat(VerbRun.of("fit", file.toString()).err())
        .anySatisfy(line -> assertThat(line).startsWith(said));
    assertThat(HistoryFile.survey(file).faults()).singleElement().asString().startsWith(said);
    assertThat(HistoryFile.survey(file).histories()).hasSize(1);
  }

  @Test
  void a_schema_finds_what_is_not_so() {
    String json = VerbRun.of("forecast", "--group", "spinal_cord", "--json").out();

    assertThat(faults("forecast", json.replace("\"p_useful_ge240\"", "\"p_four_hours\"")))
        .isNotEmpty();
    assertThat(faults("forecast", json.replace("\"injections\":0", "\"injections\":-1")))
        .isNotEmpty();
  }

  /** A man before his first injection has the mean of his group and the deviation of all. */
  @Test
  void a_man_without_injections_is_one_of_his_group() {
    VerbRun run =
        VerbRun.of("forecast", "--group", "vasculogenic", "--population", POPULATION, "--json");

    assertThat(run.out()).contains("\"patient\":null", "\"injections\":0");
    assertThat(VerbRun.of("forecast", "--group", "vasculogenic", "--population", POPULATION).out())
        .contains("A man of the group vasculogenic before his first injection: requirement");
    assertThat(VerbRun.of("forecast", "--group", "nobody").err())
        .singleElement()
        .asString()
        .startsWith("--group: \"nobody\" was given, which the population does not hold: it holds");
    assertThat(VerbRun.of("forecast", HISTORY, "--group", "mixed").err())
        .singleElement()
        .asString()
        .startsWith("Give either a history");
  }

  @Test
  @ResourceLock(Resources.SYSTEM_PROPERTIES)
  void a_history_comes_from_another_program_too() throws IOException {
    byte[] history = Files.readAllBytes(Path.of(HISTORY));
    byte[] packed = Files.readAllBytes(COURSES);

    assertThat(runWith(history, "forecast", "-", "--population", POPULATION, "--json").out())
        .isEqualTo(VerbRun.of("forecast", HISTORY, "--population", POPULATION, "--json").out());
    assertThat(numbers(runWith(packed, "fit", "-", "--json").out()))
        .isEqualTo(numbers(VerbRun.of("fit", COURSES.toString(), "--json").out()));
    assertThat(runWith("nonsense".getBytes(StandardCharsets.UTF_8), "fit", "-").status())
        .isEqualTo(2);
  }

  /** The answer without the name of the preparation, which is that of the file. */
  private static String numbers(String json) {
    return json.replaceAll("\"reference_preparation\":\"[^\"]*\"", "");
  }
}
