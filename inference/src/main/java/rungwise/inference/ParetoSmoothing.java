package rungwise.inference;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Weights of importance sampling of which the largest are replaced by the quantiles of a
 * generalised Pareto distribution that is fitted to them, so that no single draw decides (Vehtari,
 * Simpson, Gelman, Yao and Gabry, JMLR 25 (2024), number 72).
 *
 * <p>The distribution is fitted by Zhang and Stephens (Technometrics 51 (2009) 316) and its shape
 * is drawn to 1/2 by as much as ten more weights would. Up to a shape of 0.7 the averages can be
 * trusted.
 */
public final class ParetoSmoothing {

  private static final double PART_OF_ALL = 0.2;
  private static final double ROOTS = 3;

  /** With fewer weights in the tail no shape can be told. */
  private static final int LEAST_TAIL = 5;

  private static final int LEAST_GRID = 30;
  private static final double PRIOR_OF_GRID = 3;
  private static final double QUARTER = 0.25;
  private static final double HALF = 0.5;
  private static final double PRIOR_WEIGHTS = 10;

  private final double[] weights;
  private double shape = Double.POSITIVE_INFINITY;

  private ParetoSmoothing(double[] weights) {
    this.weights = weights;
  }

  /**
   * Smooths.
   *
   * @param logRatios the logarithms of target over proposal, one for each draw, up to a constant
   */
  public static ParetoSmoothing of(double[] logRatios) {
    double highest = Arrays.stream(logRatios).max().orElse(0);
    var smoothing =
        new ParetoSmoothing(
            Arrays.stream(logRatios).map(ratio -> Math.exp(ratio - highest)).toArray());
    smoothing.smooth();
    double sum = Arrays.stream(smoothing.weights).sum();
    Arrays.setAll(smoothing.weights, i -> smoothing.weights[i] / sum);
    return smoothing;
  }

  /** The weights, which sum to 1. */
  public double[] weights() {
    return weights.clone();
  }

  /** The shape of the tail, infinite where there are too few draws to tell. */
  public double shape() {
    return shape;
  }

  private void smooth() {
    int count = weights.length;
    int tail = (int) Math.ceil(Math.min(PART_OF_ALL * count, ROOTS * Math.sqrt(count)));
    if (tail < LEAST_TAIL) {
      return;
    }
    int[] order =
        IntStream.range(0, count)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> weights[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    double cut = weights[order[count - tail - 1]];
    double[] over = new double[tail];
    Arrays.setAll(over, i -> weights[order[count - tail + i]] - cut);
    if (!(over[quarter(tail)] > 0)) {
      return;
    }
    double scale = fit(over);
    for (int i = 0; i < tail; i++) {
      double fromEnd = Math.log1p(-(i + HALF) / tail);
      double quantile = cut + scale * Math.expm1(-shape * fromEnd) / shape;
      weights[order[count - tail + i]] = Math.min(1, quantile);
    }
  }

  private static int quarter(int count) {
    return Math.max(0, (int) (QUARTER * count + HALF) - 1);
  }

  /** Sets the shape; the answer is the scale. */
  private double fit(double[] over) {
    int count = over.length;
    int grid = LEAST_GRID + (int) Math.sqrt(count);
    double[] slopes = new double[grid];
    double[] logs = new double[grid];
    for (int j = 0; j < grid; j++) {
      double root = Math.sqrt(grid / (j + HALF));
      slopes[j] = 1 / over[count - 1] + (1 - root) / (PRIOR_OF_GRID * over[quarter(count)]);
      double own = meanLog(over, slopes[j]);
      logs[j] = count * (Math.log(-slopes[j] / own) - own - 1);
    }
    double slope = 0;
    for (int j = 0; j < grid; j++) {
      double sum = 0;
      for (double log : logs) {
        sum += Math.exp(log - logs[j]);
      }
      slope += slopes[j] / sum;
    }
    double fitted = meanLog(over, slope);
    shape = (fitted * count + HALF * PRIOR_WEIGHTS) / (count + PRIOR_WEIGHTS);
    return -fitted / slope;
  }

  private static double meanLog(double[] over, double slope) {
    return Arrays.stream(over).map(one -> Math.log1p(-slope * one)).average().orElse(0);
  }
}
