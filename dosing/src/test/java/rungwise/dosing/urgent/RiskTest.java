package rungwise.dosing.urgent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.quantities.TimeSpan;

/** Risk by hours: eMedicine 115710, and EAU Figure 13; rows G038 to G042 of clinical-checks.csv. */
final class RiskTest {

  private static final long HOUR = 3_600_000;

  private static List<Risk> reached(long milliseconds) {
    return Risk.reached(new Elapsed.Known(new TimeSpan(milliseconds)));
  }

  @Test
  void each_hour_has_two_sides() {
    assertThat(reached(6 * HOUR - 1)).isEmpty();
    assertThat(reached(6 * HOUR)).containsExactly(Risk.SMOOTH_MUSCLE_CHANGE_BEGINS);
    assertThat(reached(24 * HOUR - 1)).hasSize(1);
    assertThat(reached(24 * HOUR)).hasSize(2).contains(Risk.CELLULAR_DAMAGE);
    assertThat(reached(36 * HOUR - 1)).hasSize(2);
    assertThat(reached(36 * HOUR)).hasSize(3).contains(Risk.FIBROSIS_RECOVERY_UNLIKELY);
    assertThat(reached(48 * HOUR)).hasSize(3);
    assertThat(reached(48 * HOUR + 1)).hasSize(4).contains(Risk.CONSIDER_EARLY_IMPLANT);
  }

  @Test
  void who_cannot_say_may_have_reached_all_of_it() {
    var unknown = new Elapsed.Unknown(Optional.of(TimeSpan.ofHours(7)));

    assertThat(Risk.reached(unknown)).containsExactly(Risk.SMOOTH_MUSCLE_CHANGE_BEGINS);
    assertThat(Risk.perhapsReached(unknown)).hasSize(3);
    assertThat(Risk.perhapsReached(new Elapsed.Unknown(Optional.empty()))).hasSize(4);
    assertThat(Risk.reached(new Elapsed.Unknown(Optional.empty()))).isEmpty();
    assertThat(Risk.perhapsReached(new Elapsed.Known(TimeSpan.ofHours(1)))).isEmpty();
  }

  @Test
  void no_text_calls_an_hour_safe() {
    assertThat(Risk.values())
        .allSatisfy(
            risk -> {
              assertThat(risk.fromWords()).matches("(From|After) [0-9]+ h");
              assertThat(risk.words())
                  .isNotBlank()
                  .doesNotContainIgnoringCase("safe")
                  .doesNotContain("until");
            });
  }
}
