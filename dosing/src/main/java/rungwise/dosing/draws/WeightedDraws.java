package rungwise.dosing.draws;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Draws of some parameters, each with the part of 1 that it stands for. */
public final class WeightedDraws {

  private final List<String> names;
  private final double[][] values;
  private final double[] weights;

  /**
   * Takes draws over; they must not be changed afterwards.
   *
   * @param values one row for each draw, with a number for each name
   * @param weights of the draws, none below 0, with the sum 1
   * @throws IllegalArgumentException if there are not as many weights as draws
   */
  public WeightedDraws(List<String> names, double[][] values, double[] weights) {
    if (values.length != weights.length) {
      throw new IllegalArgumentException(
          "bug: " + values.length + " draws with " + weights.length + " weights");
    }
    this.names = List.copyOf(names);
    this.values = values;
    this.weights = weights;
  }

  /** No draws at all. */
  public static WeightedDraws none() {
    return new WeightedDraws(List.of(), new double[0][], new double[0]);
  }

  public List<String> names() {
    return names;
  }

  public int count() {
    return weights.length;
  }

  /** The part of 1 that a draw stands for. */
  public double weight(int draw) {
    return weights[draw];
  }

  /** What a draw has for the parameter at this place of the names. */
  public double value(int draw, int place) {
    return values[draw][place];
  }

  public double mean(int place) {
    double mean = 0;
    for (int draw = 0; draw < weights.length; draw++) {
      mean += weights[draw] * values[draw][place];
    }
    return mean;
  }

  /** The smallest value up to which draws of this part of 1 lie. */
  public double quantile(int place, double part) {
    int[] order =
        IntStream.range(0, weights.length)
            .boxed()
            .sorted(Comparator.comparingDouble(draw -> values[draw][place]))
            .mapToInt(Integer::intValue)
            .toArray();
    double sum = 0;
    for (int draw : order) {
      sum += weights[draw];
      if (sum >= part) {
        return values[draw][place];
      }
    }
    return values[order[order.length - 1]][place];
  }

  /** How the parameters go together. */
  public Covariance covariance() {
    int size = names.size();
    double[] means = IntStream.range(0, size).mapToDouble(this::mean).toArray();
    double[][] sums = new double[size][size];
    for (int draw = 0; draw < weights.length; draw++) {
      for (int row = 0; row < size; row++) {
        double apart = weights[draw] * (values[draw][row] - means[row]);
        for (int column = 0; column < size; column++) {
          sums[row][column] += apart * (values[draw][column] - means[column]);
        }
      }
    }
    return Covariance.of(names, sums);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof WeightedDraws draws
        && names.equals(draws.names)
        && Arrays.equals(weights, draws.weights)
        && Arrays.deepEquals(values, draws.values);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(weights);
  }

  @Override
  public String toString() {
    return count() + " draws of " + names + ", weights " + Arrays.stream(weights).sum();
  }
}
