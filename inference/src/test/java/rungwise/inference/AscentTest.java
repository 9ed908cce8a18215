package rungwise.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class AscentTest {

  private static final double[] WIDE_LOW = {-10, -10};
  private static final double[] WIDE_HIGH = {10, 10};

  /** Less Rosenbrock's valley, whose top is 0 at (1, 1) (Computer Journal 3 (1960) 175). */
  private static Curved valley(double[] at) {
    double x = at[0];
    double y = at[1];
    double bent = y - x * x;
    return new Curved(
        -100 * bent * bent - (1 - x) * (1 - x),
        new double[] {400 * x * bent + 2 * (1 - x), -200 * bent},
        new double[][] {{400 * bent - 800 * x * x - 2, 400 * x}, {400 * x, -200}});
  }

  @Test
  void the_end_of_a_bent_valley_is_found() {
    Ascent.Top top =
        Ascent.search(AscentTest::valley, new double[] {-1.2, 1}, WIDE_LOW, WIDE_HIGH, 1e-14);

    assertThat(top.isSettled()).isTrue();
    // A gain of 1e-14 where the flattest curvature is 0.4.
    assertThat(top.point()).containsExactly(new double[] {1, 1}, within(1e-6));
  }

  @Test
  void a_top_outside_of_the_box_is_sought_on_its_side() {
    Ascent.Top top =
        Ascent.search(
            AscentTest::valley, new double[] {-1.2, 1}, WIDE_LOW, new double[] {0.5, 10}, 1e-14);

    assertThat(top.isSettled()).isTrue();
    // With x held at 0.5 the valley's bottom is at y = 0.25.
    assertThat(top.point()).containsExactly(new double[] {0.5, 0.25}, within(1e-9));
  }

  @Test
  void a_variable_whose_range_is_one_point_is_held() {
    double[] low = {-10, 3};
    double[] high = {10, 3};

    Ascent.Top top = Ascent.search(AscentTest::valley, new double[] {1, 0}, low, high, 1e-14);

    assertThat(top.point()[1]).isEqualTo(3);
    // Along the line y = 3 nothing rises any more.
    assertThat(valley(top.point()).gradient()[0]).isCloseTo(0, within(1e-4));
  }

  @Test
  void a_function_without_a_top_is_not_settled() {
    Ascent.Top top =
        Ascent.search(
            at -> new Curved(at[0] * at[0], new double[] {2 * at[0]}, new double[][] {{2}}),
            new double[] {1},
            new double[] {-1e300},
            new double[] {1e300},
            1e-10);

    assertThat(top.isSettled()).isFalse();
  }
}
