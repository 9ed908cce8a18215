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
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** What other programs read of forecast and fit, held to docs/schemas (JSON Schema 2020-12). */
final class VerbAnswersTest {

  private static final Path REFERENCE = Path.of("..", "reference");
  private static final String HISTORY = REFERENCE.resolve("example.csv").toString();
  private static final String POPULATION = REFERENCE.resolve("example-population.json").toString();
  private static final Path COURSES = REFERENCE.resolve("fit").resolve("n60.csv.gz");

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
