package rungwise.dosing.strength;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.dosing.strength.Decay.Order;

/**
 * Rates, lines and sequences against reference/vial_strength.txt, where SciPy 1.17.1 found them by
 * integration, roots and regression: within 1e-8 of their size.
 */
final class KineticsGoldenTest {

  private static final double PERCENT = 1e-6;

  /** A line of the file: its kind, and the words after it. */
  private record Line(List<String> words) {

    double number(int place) {
      return Double.parseDouble(words.get(place));
    }

    Order order() {
      return Order.valueOf(words.get(1));
    }
  }

  private static List<Line> lines(String kind) {
    try {
      return Files.readAllLines(
              Path.of("..", "reference", "vial_strength.txt"), StandardCharsets.UTF_8)
          .stream()
          .filter(line -> line.startsWith(kind + " "))
          .map(line -> new Line(Arrays.asList(line.split(" ", -1))))
          .toList();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static void assertSame(double ours, double theirs) {
    assertThat(ours).isCloseTo(theirs, withinPercentage(PERCENT));
  }

  @Test
  void a_rate_is_the_root_of_the_integrated_loss() {
    assertThat(lines("rate")).hasSize(40);
    for (Line line : lines("rate")) {
      assertSame(
          Decay.leaving(line.order(), line.number(2), line.number(3)).perTime(), line.number(4));
    }
  }

  @Test
  void the_time_to_nine_tenths_is_the_root_of_the_integrated_loss() {
    assertThat(lines("ninety")).hasSize(40);
    for (Line line : lines("ninety")) {
      assertSame(new Decay(line.order(), line.number(2)).timeTo(0.9), line.number(3));
    }
  }

  @Test
  void what_is_left_is_the_integrated_loss() {
    assertThat(lines("left")).hasSize(40);
    for (Line line : lines("left")) {
      assertSame(new Decay(line.order(), line.number(2)).left(line.number(3)), line.number(4));
    }
  }

  @Test
  void the_line_through_two_rates_is_that_of_a_regression() {
    assertThat(lines("line")).hasSize(20);
    for (Line line : lines("line")) {
      var ours = Arrhenius.through(line.number(1), line.number(2), line.number(3), line.number(4));

      assertSame(ours.kilojoulesPerMole(), line.number(5));
      assertSame(ours.perTimeAt(line.number(6)).orElseThrow(), line.number(7));
    }
  }

  @Test
  void the_mean_kinetic_temperature_is_a_root() {
    assertThat(lines("kinetic")).hasSize(20);
    for (Line line : lines("kinetic")) {
      var readings = line.words().stream().skip(2).map(Double::valueOf).toList();

      assertSame(MeanKinetic.celsius(readings), line.number(1));
    }
  }

  @Test
  void cold_and_warm_days_after_each_other_take_what_the_integral_says() {
    assertThat(lines("sequence")).hasSize(20);
    for (Line line : lines("sequence")) {
      double cold = Measured.ALPROSTADIL_COLD.decay().left(line.number(1));
      double warm = Measured.ALPROSTADIL_WARM.decay().left(line.number(2));

      assertSame(cold * warm, line.number(3));
    }
  }
}
