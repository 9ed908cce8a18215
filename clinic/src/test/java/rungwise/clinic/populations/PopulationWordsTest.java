package rungwise.clinic.populations;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import rungwise.clinic.populations.PopulationWords.GroupLine;
import rungwise.clinic.populations.PopulationWords.Parameter;
import rungwise.dosing.response.Population;

final class PopulationWordsTest {

  /**
   * By hand: 0.1 exp(1.2943) = 0.3648, exp(1.6449 x 1.69) = 16.11, so 0.0226 to 5.88; exp(3.6902) =
   * 40.05.
   */
  @Test
  void the_middle_and_nine_in_ten_of_a_group_are_told_in_millilitres() {
    PopulationWords words =
        PopulationWords.of(
            new Population(
                1.2943, Map.of("vasculogenic", 0.0), 1.69, 3, -1.5, 1.5, 3.6902, 0.5, 0.45));

    assertThat(words.groups())
        .containsExactly(new GroupLine("vasculogenic", "0.36 mL", "0.023 to 5.9 mL"));
    assertThat(words.minutes()).isEqualTo("40 min");
    assertThat(words.parameters())
        .contains(new Parameter("omega", "1.69"), new Parameter("gamma of vasculogenic", "0"))
        .contains(new Parameter("beta", "3"));
  }
}
