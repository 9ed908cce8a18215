package rungwise.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Shapes and weights against the package loo of R: reference/pareto.R. */
final class ParetoSmoothingTest {

  private static final Path REFERENCE = Path.of("..", "reference", "pareto.txt");
  private static final int[] PRINTED = {0, 1, 4};

  private static double logLogistic(double z, double location, double scale) {
    double apart = (z - location) / scale;
    return -apart - Math.log(scale) - 2 * Math.log1p(Math.exp(-apart));
  }

  private static double[] logRatios(double factor, int count) {
    double[] ratios = new double[count];
    for (int i = 0; i < count; i++) {
      double part = (i + 0.5) / count;
      double z = Math.log(part / (1 - part));
      ratios[i] = logLogistic(z, 0.3, factor) - logLogistic(z, 0, 1);
    }
    return ratios;
  }

  @Test
  void shape_and_weights_are_those_of_loo() throws IOException {
    var lines = Files.readAllLines(REFERENCE, StandardCharsets.UTF_8);
    assertThat(lines).hasSize(7);
    for (String line : lines.subList(1, lines.size())) {
      double[] printed =
          Arrays.stream(line.strip().split(" +", -1)).mapToDouble(Double::parseDouble).toArray();
      int count = (int) printed[1];

      var smoothing = ParetoSmoothing.of(logRatios(printed[0], count));

      // Both print 15 digits of numbers that lose a few of them in differences.
      assertThat(smoothing.shape()).as(line).isCloseTo(printed[2], within(1e-9));
      double[] weights = smoothing.weights();
      for (int i = 0; i < PRINTED.length; i++) {
        assertThat(weights[PRINTED[i]]).as(line).isCloseTo(printed[3 + i], within(1e-11));
      }
      assertThat(weights[count / 2 - 1]).as(line).isCloseTo(printed[6], within(1e-11));
      assertThat(Arrays.stream(weights).sum()).isCloseTo(1, within(1e-12));
    }
  }

  @Test
  void too_few_draws_or_equal_ones_tell_no_shape() {
    assertThat(ParetoSmoothing.of(new double[] {1, 2, 3}).shape()).isInfinite();
    assertThat(ParetoSmoothing.of(new double[100]).shape()).isInfinite();
    assertThat(ParetoSmoothing.of(new double[100]).weights()).containsOnly(0.01);
  }
}
