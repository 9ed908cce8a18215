package rungwise.dosing.response;

import java.util.List;
import rungwise.inference.GaussLegendre;
import rungwise.inference.Normal;

/**
 * Durations of which only bounds are known: still firm when last seen, or soft between two looks.
 *
 * <p>Each is the probability of a normal variable between two bounds that move together with the
 * requirement. In the tails it is kept as a density times a ratio, because what counts is how
 * probable it is relative to other requirements, however improbable. The densities are summed as
 * logarithms, everything else is multiplied.
 */
final class BoundedDurations {

  private static final double PEAK = 0.3989422804014327;

  /** Below this the distribution function is too small for its table. */
  private static final double TAIL = -2.5;

  /** A stretch so narrow that a difference would lose digits. */
  private static final double NARROW = 0.1;

  private static final double SMALL = 1e-200;

  /** The bounds below, where the requirement is 0; minus infinity where there is none. */
  private final double[] lower;

  private final double[] upper;

  /** Their differences, which may be too small to be taken from them. */
  private final double[] widths;

  /** How much all bounds fall where the requirement rises by 1. */
  private final double slope;

  private BoundedDurations(List<double[]> bounds, double slope) {
    lower = bounds.stream().mapToDouble(pair -> pair[0]).toArray();
    upper = bounds.stream().mapToDouble(pair -> pair[1]).toArray();
    widths = bounds.stream().mapToDouble(pair -> pair[2]).toArray();
    this.slope = slope;
  }

  static BoundedDurations of(Population population, List<Trial> trials) {
    var bounds =
        trials.stream()
            .filter(trial -> trial.grade().isUseful())
            .map(trial -> bounds(population, trial))
            .filter(pair -> pair[2] > 0 && !isAll(pair))
            .toList();
    return new BoundedDurations(bounds, population.surplusPerRequirement());
  }

  private static boolean isAll(double[] pair) {
    return Double.isInfinite(pair[0]) && Double.isInfinite(pair[1]);
  }

  /** Lower, upper and width. A longer time leaves a smaller surplus: it is the lower bound. */
  private static double[] bounds(Population population, Trial trial) {
    double x = trial.logDose();
    return switch (trial.lasted()) {
      case Lasted.AtLeast(double minutes) ->
          new double[] {
            Double.NEGATIVE_INFINITY,
            population.surplus(x, Math.log(minutes)),
            Double.POSITIVE_INFINITY
          };
      case Lasted.Between(double from, double before) ->
          new double[] {
            population.surplus(x, Math.log(before)),
            population.surplus(x, Math.log(from)),
            Math.log1p((before - from) / from) / population.tau()
          };
      case Lasted.Exactly exactly -> new double[] {0, 0, 0};
      case Lasted.NotRecorded none -> new double[] {0, 0, 0};
    };
  }

  boolean isEmpty() {
    return upper.length == 0;
  }

  /** The logarithm of their joint probability for a requirement. */
  double logAt(double requirement) {
    double shift = slope * requirement;
    double product = 1;
    double log = 0;
    for (int i = 0; i < upper.length; i++) {
      double below = lower[i] - shift;
      double above = upper[i] - shift;
      boolean isMirrored = below + above > 0;
      double low = isMirrored ? -above : below;
      double high = isMirrored ? -below : above;
      if (widths[i] < NARROW) {
        double middle = (low + high) / 2;
        product *= stretch(middle, widths[i] / 2);
        log -= middle * middle / 2;
      } else if (high > TAIL) {
        product *= Normal.cdf(high) - Normal.cdf(low);
      } else {
        product *= tail(low, high);
        log -= high * high / 2;
      }
      if (product < SMALL) {
        log += Math.log(product);
        product = 1;
      }
    }
    return log + Math.log(product);
  }

  /** The probability of a short stretch, divided by exp(-middle^2 / 2). */
  private static double stretch(double middle, double half) {
    return PEAK * GaussLegendre.integral(s -> Math.exp(-s * (middle + s / 2)), 0, half);
  }

  /** The probability between two bounds far below 0, divided by exp(-high^2 / 2). */
  private static double tail(double low, double high) {
    double rest = Math.exp((high * high - low * low) / 2);
    return PEAK * (Normal.tailRatio(-high) - Normal.tailRatio(-low) * rest);
  }
}
