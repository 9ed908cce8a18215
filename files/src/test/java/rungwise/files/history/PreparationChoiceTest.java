package rungwise.files.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.quantities.Reading;

/** A strength is exact between strengths of one component alone; nothing else is read as if. */
final class PreparationChoiceTest {

  private static final String HEADER =
      "patient,group,injection,volume_ml,potency,strength,grade,"
          + "duration_min,duration_status,duration_upper_min,preparation\n";

  /** One line of a man with these strengths and preparations. */
  private static HistoryFile file(String... strengthsAndPreparations) {
    var text = new StringBuilder(HEADER);
    for (int at = 0; at < strengthsAndPreparations.length; at++) {
      String[] both = strengthsAndPreparations[at].split(" ", -1);
      text.append("A,mixed,").append(at + 1).append(",0.1,1,").append(both[0]);
      text.append(",3,40,exact,,").append(both[1]).append('\n');
    }
    return HistoryFile.read("h.csv", text.toString().getBytes(StandardCharsets.UTF_8)).orThrow();
  }

  private static Reading<PreparationChoice.Chosen> forecast(HistoryFile file, String... named) {
    return new PreparationChoice(List.of(named), Optional.of("alprostadil-20")).of(file);
  }

  private static Reading<PreparationChoice.Chosen> fit(HistoryFile file, String... named) {
    return new PreparationChoice(List.of(named), Optional.empty()).of(file);
  }

  @Test
  void a_history_of_another_preparation_than_the_populations_is_refused_by_line() {
    HistoryFile mixture = file("1 three-drug-30-1-10", "1 three-drug-30-1-10");

    assertThat(forecast(mixture).faults())
        .containsExactly(
            "line 2: preparation: \"three-drug-30-1-10\" was given, and the model is asked about"
                + " \"alprostadil-20\": choose the lines to read by --preparation",
            "line 3: preparation: \"three-drug-30-1-10\" was given, and the model is asked about"
                + " \"alprostadil-20\": choose the lines to read by --preparation");
    assertThat(forecast(mixture, "alprostadil-20").faults())
        .containsExactly(
            "--preparation: no line is of alprostadil-20: the file names three-drug-30-1-10");
  }

  @Test
  void what_was_not_chosen_is_left_out_and_counted() {
    HistoryFile both = file("1 alprostadil-20", "1 three-drug", "1 ", "0.5 alprostadil-10");

    PreparationChoice.Chosen chosen = forecast(both, "alprostadil-20", "alprostadil-10").orThrow();

    assertThat(chosen.lines()).extracting(line -> line.said().line()).containsExactly(2L, 5L);
    assertThat(chosen.lines())
        .extracting(PreparationChoice.Line::strength)
        .containsExactly(1.0, 0.5);
    assertThat(chosen.leftOut()).isEqualTo(2);
    assertThat(forecast(both).faults()).hasSize(2).allMatch(fault -> fault.contains("preparation"));
  }

  @Test
  void a_fit_is_of_one_preparation_and_names_it() {
    assertThat(fit(file("1 three-drug", "1 three-drug")).orThrow().preparation())
        .contains("three-drug");
    assertThat(fit(file("1 three-drug", "1 alprostadil-20")).faults())
        .hasSize(1)
        .allMatch(fault -> fault.startsWith("line 3: preparation: \"alprostadil-20\" was given"));
    assertThat(fit(file("1 three-drug", "1 ")).faults())
        .hasSize(1)
        .allMatch(fault -> fault.startsWith("line 3: preparation: nothing was given"));
    assertThat(fit(file("1 ", "0.5 ")).orThrow().preparation()).isEmpty();
    assertThat(fit(file("0.5 alprostadil-10")).orThrow().preparation()).isEmpty();
  }

  @Test
  void of_itself_a_preparation_has_strength_1_and_of_another_none_is_supposed() {
    assertThat(fit(file(" three-drug")).orThrow().lines())
        .extracting(PreparationChoice.Line::strength)
        .containsExactly(1.0);
    assertThat(fit(file(" ")).faults())
        .containsExactly(
            "line 2: strength: nothing was given, so it is not known: write it relative to the"
                + " preparation of strength 1, or leave the line out by --preparation");
    assertThat(forecast(file(" alprostadil-10"), "alprostadil-10").faults())
        .containsExactly(
            "line 2: strength: nothing was given, so it is not known: write it relative to"
                + " \"alprostadil-20\", or leave the line out by --preparation");
    assertThat(forecast(file("0.5 alprostadil-20")).faults())
        .containsExactly(
            "line 2: strength: 0.5 was given, and the preparation is that of the population: its"
                + " strength is 1");
  }

  @Test
  void names_stand_with_commas_between() {
    assertThat(PreparationChoice.read("--preparation", "a, b").orThrow()).containsExactly("a", "b");
    assertThat(PreparationChoice.read("--preparation", "a,,b").faults().getFirst())
        .startsWith("--preparation: \"a,,b\" was given: write the names");
  }
}
