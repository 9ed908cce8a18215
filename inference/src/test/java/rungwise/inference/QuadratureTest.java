package rungwise.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against closed forms: the normal, the logistic and the log-gamma distribution. */
final class QuadratureTest {

  private static final Features SMOOTH = new Features(1, 1);

  /** Far inside what a forecast may be off, 1e-8. */
  private static final double CLOSE = 1e-10;

  /** Euler's constant (Abramowitz and Stegun, table 1.1). */
  private static final double EULER = 0.5772156649015329;

  private static double average(Quadrature quadrature, java.util.function.DoubleUnaryOperator of) {
    double sum = 0;
    for (int i = 0; i < quadrature.nodes().length; i++) {
      sum += quadrature.weights()[i] * of.applyAsDouble(quadrature.nodes()[i]);
    }
    return sum;
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "3, 0.001", "-40, 17", "12, 0.3", "1000, 0.05"})
  void a_normal_density_has_its_moments_and_quantiles_wherever_the_search_starts(
      double mean, double deviation) {
    for (double start : new double[] {mean, mean - 30 * deviation, mean + 400 * deviation, 0}) {
      Quadrature quadrature =
          Quadrature.of(x -> Normal.logDensity((x - mean) / deviation), start, 1, SMOOTH);

      assertThat(quadrature.logMass()).isCloseTo(Math.log(deviation), within(CLOSE));
      assertThat(quadrature.mean()).isCloseTo(mean, within(CLOSE * deviation));
      assertThat(quadrature.standardDeviation()).isCloseTo(deviation, within(CLOSE * deviation));
      // The 5 % point of the standard normal distribution, -1.6448536269514722 (any table).
      assertThat(quadrature.quantile(0.05))
          .isCloseTo(mean - 1.6448536269514722 * deviation, within(1e-9 * deviation));
      assertThat(quadrature.quantile(0.95))
          .isCloseTo(mean + 1.6448536269514722 * deviation, within(1e-9 * deviation));
    }
  }

  @ParameterizedTest
  @CsvSource({"1", "3", "40"})
  void the_logarithm_of_a_gamma_variable_has_the_moments_of_the_digamma_functions(int shape) {
    Quadrature quadrature = Quadrature.of(x -> shape * x - Math.exp(x), 5, 1, SMOOTH);

    assertThat(quadrature.logMass()).isCloseTo(Gamma.logGamma(shape), within(CLOSE));
    assertThat(quadrature.mean()).isCloseTo(digamma(shape), within(CLOSE));
    assertThat(quadrature.standardDeviation()).isCloseTo(Math.sqrt(trigamma(shape)), within(CLOSE));
  }

  /** -gamma + 1 + 1/2 + ... (Abramowitz and Stegun, 6.3.2). */
  private static double digamma(int shape) {
    double sum = -EULER;
    for (int k = 1; k < shape; k++) {
      sum += 1.0 / k;
    }
    return sum;
  }

  /** pi^2/6 - 1 - 1/4 - ... (Abramowitz and Stegun, 6.4.3). */
  private static double trigamma(int shape) {
    double sum = Math.PI * Math.PI / 6;
    for (int k = 1; k < shape; k++) {
      sum -= 1.0 / ((double) k * k);
    }
    return sum;
  }

  @Test
  void a_logistic_density_has_its_quantiles() {
    Quadrature quadrature = Quadrature.of(x -> -x - 2 * Math.log1p(Math.exp(-x)), -3, 0.1, SMOOTH);

    assertThat(quadrature.quantile(0.05)).isCloseTo(Math.log(0.05 / 0.95), within(1e-9));
    assertThat(quadrature.quantile(0.5)).isCloseTo(0, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1.6, 0.2, 4", "0.3, 0.2, 4", "1.6, 0.8, 1", "0.05, 0.1, 4"})
  void functions_as_fine_as_announced_are_averaged(double deviation, double kernel, double slope) {
    Quadrature quadrature =
        Quadrature.of(
            x -> Normal.logDensity(x / deviation),
            0,
            deviation,
            new Features(Math.PI / slope, kernel));

    for (double shift = -3; shift < 3; shift += 0.37) {
      double at = shift;
      // The sum of two normal variables is normal.
      assertThat(average(quadrature, x -> Normal.cdf((at - x) / kernel)))
          .isCloseTo(Normal.cdf(at / Math.hypot(kernel, deviation)), within(CLOSE));
    }
    // By symmetry.
    assertThat(average(quadrature, x -> 1 / (1 + Math.exp(-slope * x))))
        .isCloseTo(0.5, within(CLOSE));
  }

  @Test
  void a_density_that_cannot_be_integrated_is_a_fault() {
    assertThatThrownBy(() -> Quadrature.of(x -> x, 0, 1, SMOOTH))
        .hasMessage("bug: a density without a top");
    assertThatThrownBy(() -> Quadrature.of(x -> Double.NaN, 0, 1, SMOOTH))
        .hasMessageStartingWith("bug: a density of NaN");
  }
}
