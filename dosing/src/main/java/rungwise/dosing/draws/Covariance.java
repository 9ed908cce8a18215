package rungwise.dosing.draws;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How the errors of parameters go together.
 *
 * @param names of the parameters
 * @param rows one for each of them, with its covariance with each, in the order of the names
 */
public record Covariance(List<String> names, List<List<Double>> rows) {

  /** Where nothing is known of any error. */
  public static final Covariance NONE = new Covariance(List.of(), List.of());

  public Covariance {
    names = List.copyOf(names);
    rows = rows.stream().map(List::copyOf).toList();
  }

  /** The same of a matrix of as many rows and columns as there are names. */
  public static Covariance of(List<String> names, double[][] matrix) {
    List<List<Double>> rows = new ArrayList<>();
    for (double[] row : matrix) {
      rows.add(Arrays.stream(row).boxed().toList());
    }
    return new Covariance(names, rows);
  }

  /** The standard error of one parameter, where it is known. */
  public OptionalDouble error(String name) {
    int place = names.indexOf(name);
    return place < 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.sqrt(rows.get(place).get(place)));
  }
}
