package rungwise.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;

/** The tables against the error function of Hipparchus 4.0.3, between and on the points. */
final class NormalTest {

  private static final double STEP = 0.00037;
  private static final double CLAIM = 1e-12;

  private static double reference(double z) {
    return 0.5 * Erf.erfc(-z / Math.sqrt(2));
  }

  @Test
  void the_distribution_function_is_right_to_the_claim_everywhere() {
    for (double z = -10; z < 10; z += STEP) {
      assertThat(Normal.cdf(z)).as("at %s", z).isCloseTo(reference(z), within(CLAIM));
    }
  }

  @Test
  void the_tail_ratio_keeps_its_relative_accuracy_far_out() {
    for (double z = 0; z < 25; z += STEP) {
      double ratio = reference(-z) / (Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI));

      assertThat(Normal.tailRatio(z) / ratio).as("at %s", z).isCloseTo(1, within(CLAIM));
    }
  }

  @Test
  void what_is_beyond_the_edge_or_no_number_is_nothing_or_all() {
    assertThat(Normal.cdf(Double.POSITIVE_INFINITY)).isEqualTo(1);
    assertThat(Normal.cdf(Double.NEGATIVE_INFINITY)).isZero();
    assertThat(Normal.cdf(Double.NaN)).isZero();
  }

  @Test
  void the_density_and_its_logarithm_are_one_function() {
    for (double z = -8; z < 8; z += 0.1) {
      assertThat(Math.log(Normal.density(z))).isCloseTo(Normal.logDensity(z), within(1e-13));
    }
    assertThat(Normal.density(0)).isCloseTo(1 / Math.sqrt(2 * Math.PI), within(1e-16));
  }
}
