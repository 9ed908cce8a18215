package rungwise.inference;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Function;

/**
 * Searches the top of a smooth function of a dozen variables in a box, by Newton's steps with the
 * exact second derivatives.
 *
 * <p>Where the curvature does not point to a top, or a step went too far, a multiple of its own
 * diagonal is added (Levenberg and Marquardt; Nocedal and Wright, Numerical Optimization, 2nd
 * edition, chapter 4). A variable at an end of its range, with the function rising outwards, stands
 * still. The search ends when the next step would raise the function by less than a given amount.
 */
public final class Ascent {

  private static final int MOST_TRIES = 200;
  private static final double FIRST_DAMPING = 1e-3;
  private static final double LEAST_DAMPING = 1e-7;
  private static final double MOST_DAMPING = 1e12;
  private static final double HARDER = 8;
  private static final double SOFTER = 0.1;
  private static final double POOR = 0.25;
  private static final double GOOD = 0.75;

  /** No variable moves more in one step. */
  private static final double LONGEST_STEP = 1.5;

  private static final double LEAST_DIAGONAL = 1e-6;

  /** What rounding does to a value. */
  private static final double ROUNDING = 1e-13;

  private final Function<double[], Curved> function;
  private final double[] low;
  private final double[] high;
  private final double enough;

  private double[] point;
  private Curved here;
  private double damping = 0;

  /** Where the search ended; it is a top only if it is settled. */
  @SuppressWarnings("ArrayRecordComponent")
  public record Top(double[] point, Curved curved, boolean isSettled) {}

  private Ascent(
      Function<double[], Curved> function,
      double[] start,
      double[] low,
      double[] high,
      double enough) {
    this.function = function;
    this.low = low;
    this.high = high;
    this.enough = enough;
    point = within(start);
    here = function.apply(point);
  }

  /**
   * Searches from a start.
   *
   * @param low the least value of each variable; one whose ends are equal is held
   * @param high the most
   * @param enough the gain that is no longer worth a step
   */
  public static Top search(
      Function<double[], Curved> function,
      double[] start,
      double[] low,
      double[] high,
      double enough) {
    return new Ascent(function, start, low, high, enough).run();
  }

  private double[] within(double[] wanted) {
    double[] result = new double[wanted.length];
    for (int i = 0; i < result.length; i++) {
      result[i] = Math.clamp(wanted[i], low[i], high[i]);
    }
    return result;
  }

  private Top run() {
    for (int tries = 0; tries < MOST_TRIES && damping < MOST_DAMPING; tries++) {
      int[] free = free();
      if (hasArrived(free)) {
        return new Top(point, here, /* isSettled= */ true);
      }
      Optional<double[]> step = step(free, damping);
      if (step.isEmpty()) {
        harder();
        continue;
      }
      double[] next = plus(point, step.get());
      double[] inside = within(next);
      double expected = expectedGain(inside);
      if (!Arrays.equals(next, inside) && !(expected > 0)) {
        harder();
      } else {
        take(inside, expected);
      }
    }
    return new Top(point, here, /* isSettled= */ false);
  }

  /**
   * Whether Newton's own step gains too little, whatever damping is in force: near the top rounding
   * alone may make steps look as if they went down.
   */
  private boolean hasArrived(int[] free) {
    return step(free, 0)
        .map(step -> plus(point, step))
        .filter(next -> Arrays.equals(next, within(next)))
        .filter(next -> expectedGain(next) <= enough)
        .isPresent();
  }

  private void take(double[] next, double expected) {
    Curved there = function.apply(next);
    double gain = there.value() - here.value();
    double ratio = gain / expected;
    if (gain >= -ROUNDING * Math.abs(here.value())) {
      point = next;
      here = there;
      if (ratio > GOOD || expected <= enough) {
        damping = damping < LEAST_DAMPING ? 0 : damping * SOFTER;
      } else if (ratio < POOR) {
        harder();
      }
    } else {
      harder();
    }
  }

  private void harder() {
    damping = Math.max(FIRST_DAMPING, damping * HARDER);
  }

  /** The variables that may move. */
  private int[] free() {
    int[] all = new int[point.length];
    int count = 0;
    for (int i = 0; i < point.length; i++) {
      double slope = here.gradient()[i];
      boolean isHeld = (point[i] >= high[i] && slope >= 0) || (point[i] <= low[i] && slope <= 0);
      if (!isHeld && low[i] < high[i]) {
        all[count] = i;
        count++;
      }
    }
    return Arrays.copyOf(all, count);
  }

  private Optional<double[]> step(int[] free, double damped) {
    double[][] matrix = new double[free.length][free.length];
    double[] slope = new double[free.length];
    for (int i = 0; i < free.length; i++) {
      slope[i] = here.gradient()[free[i]];
      for (int j = 0; j <= i; j++) {
        matrix[i][j] = -here.hessian()[free[i]][free[j]];
      }
      matrix[i][i] += damped * Math.max(LEAST_DIAGONAL, Math.abs(matrix[i][i]));
    }
    return SymmetricSystem.of(matrix).map(system -> spread(free, system.solve(slope)));
  }

  private double[] spread(int[] free, double[] step) {
    double longest = Arrays.stream(step).map(Math::abs).max().orElse(0);
    double part = longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
    double[] result = new double[point.length];
    for (int i = 0; i < free.length; i++) {
      result[free[i]] = step[i] * part;
    }
    return result;
  }

  private static double[] plus(double[] one, double[] other) {
    double[] sum = new double[one.length];
    for (int i = 0; i < sum.length; i++) {
      sum[i] = one[i] + other[i];
    }
    return sum;
  }

  /** What the parabola through this point gains. */
  private double expectedGain(double[] next) {
    double gain = 0;
    for (int i = 0; i < next.length; i++) {
      double step = next[i] - point[i];
      gain += step * here.gradient()[i];
      for (int j = 0; j < next.length; j++) {
        gain += step * here.hessian()[i][j] * (next[j] - point[j]) / 2;
      }
    }
    return gain;
  }
}
