package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What fit --check says of reports that do, and do not, follow the model. */
final class FitCheckTest {

  private static final String HISTORY = Path.of("..", "reference", "fit", "n60.csv.gz").toString();

  private static VerbRun fit(String... options) {
    return VerbRun.of("fit", options);
  }

  /** What misses is counted by hand from the document, and told in words beside one in ten. */
  @Test
  void a_check_counts_the_ranges_that_miss_and_lists_them() {
    VerbRun document = fit(HISTORY, "--check", "--json");
    VerbRun words = fit(HISTORY, "--check");

    String json = document.out();
    int missed = json.split("\"within\":false", -1).length - 1;
    int ranges = missed + json.split("\"within\":true", -1).length - 1;
    assertThat(ranges).isGreaterThan(20);
    assertThat(json)
        .contains("\"ranges\":" + ranges + ",\"missed\":" + missed + ",\"missed_by_chance\":");
    assertThat(words.out())
        .contains(
            missed
                + " of "
                + ranges
                + " ranges miss what was reported; by chance alone about "
                + Math.round(ranges / 10.0)
                + " do.");
    assertThat(
            words
                .out()
                .lines()
                .filter(line -> line.contains(" mL, up to ") || line.contains("useful and ")))
        .hasSize(missed);
    assertThat(fit(HISTORY, "--posterior", "--json").out()).doesNotContain("\"check\"");
  }

  /** One man's times are 6 and 600 min in turns, which those of no other man of the file are. */
  @Test
  void a_man_whose_reports_contradict_each_other_keeps_a_fit_from_being_signed(@TempDir Path folder)
      throws IOException {
    var text = new StringBuilder();
    boolean isShort = true;
    for (String line : lines(Path.of(HISTORY))) {
      boolean isHis = line.startsWith("P1,") && line.contains(",exact,");
      isShort ^= isHis;
      text.append(
          isHis ? line.replaceFirst("[0-9.]+,exact", isShort ? "6,exact" : "600,exact") : line);
      text.append('\n');
    }
    Path file = Files.writeString(folder.resolve("turns.csv"), text, StandardCharsets.UTF_8);

    VerbRun before = fit(HISTORY, "--check");
    VerbRun after = fit(file.toString(), "--check");

    assertThat(before.status()).isZero();
    assertThat(fit(HISTORY).out()).contains("was not looked at: --check does it");
    assertThat(before.out()).doesNotContain("was not looked at");
    assertThat(after.status()).isEqualTo(RungwiseCommand.NOT_TO_BE_RELIED_ON);
    assertThat(after.out())
        .contains("In 1 course (the first is number 1) the reports contradict each other");
    assertThat(after.out().lines().filter(line -> line.startsWith("  patient P")).findFirst())
        .hasValueSatisfying(line -> assertThat(line).startsWith("  patient P1 ").contains("1 in "));
    assertThat(fit(file.toString(), "--check", "--json").out())
        .contains("\"worst\":[{\"number\":1,", "\"doubts\":[");
  }

  private static List<String> lines(Path packed) throws IOException {
    try (var in = new GZIPInputStream(Files.newInputStream(packed))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    }
  }

  @Test
  void a_check_of_one_seed_is_the_same_for_any_number_of_threads() {
    assertThat(fit(HISTORY, "--check", "--json", "--threads", "1").out())
        .isEqualTo(fit(HISTORY, "--check", "--json", "--threads", "2").out());
  }
}
