package rungwise.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

/** Probability and moments against the Gauss integrator of Hipparchus 4.0.3. */
final class TruncatedNormalTest {

  private static final double[][] STRETCHES = {
    {-0.5, 0.7},
    {1, 1.1},
    {-8, -7.99},
    {3, 5},
    {20, 21},
    {-21, -20},
    {-3, 3},
    {0, 0.29},
    {2, 2.2},
    {-1e-4, 1e-4},
    {5, 5.05},
    {-2.5, 9},
    {7, 12},
    {-0.1, 0.25}
  };

  /** The integral of z^power times the density over that at the bound nearer to 0. */
  private static double integral(double low, double high, int power, double top) {
    return new IterativeLegendreGaussIntegrator(20, 1e-13, 1e-13)
        .integrate(
            1_000_000, z -> Math.pow(z, power) * Math.exp((top * top - z * z) / 2), low, high);
  }

  private static double nearest(double low, double high) {
    return low * high <= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
  }

  @Test
  void probability_and_moments_are_those_of_a_numerical_integral() {
    var ours = new TruncatedNormal();
    for (double[] stretch : STRETCHES) {
      double low = stretch[0];
      double high = stretch[1];
      double top = nearest(low, high);
      double mass = integral(low, high, 0, top);
      String as = low + " to " + high;

      ours.between(low, high);

      // Normal claims 1e-12 of the tables; a stretch of a tenth has a tenth of their probability.
      assertThat(ours.logMass())
          .as(as)
          .isCloseTo(Math.log(mass) + Normal.logDensity(top), within(2e-10));
      assertThat(TruncatedNormal.logMass(low, high))
          .as(as)
          .isCloseTo(ours.logMass(), within(2e-10));
      double[] moments = {ours.first(), ours.second(), ours.third(), ours.fourth()};
      for (int power = 1; power <= moments.length; power++) {
        double expected = integral(low, high, power, top) / mass;
        assertThat(moments[power - 1])
            .as(as + ", power " + power)
            .isCloseTo(expected, within(2e-9 * Math.max(1, Math.abs(expected))));
      }
    }
  }

  @Test
  void without_an_upper_bound_the_mean_is_one_over_the_tail_ratio() {
    var ours = new TruncatedNormal();
    for (double low = 0; low < 30; low += 0.37) {
      ours.between(low, Double.POSITIVE_INFINITY);
      double hazard = 1 / Normal.tailRatio(low);

      assertThat(ours.first()).isCloseTo(hazard, within(1e-12 * hazard));
      assertThat(ours.second()).isCloseTo(1 + low * hazard, within(1e-9));
      ours.between(Double.NEGATIVE_INFINITY, -low);
      assertThat(ours.first()).isCloseTo(-hazard, within(1e-12 * hazard));
    }
  }
}
