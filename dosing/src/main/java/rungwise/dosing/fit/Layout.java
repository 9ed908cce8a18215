package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import rungwise.dosing.response.Population;
import rungwise.inference.Curved;

/**
 * Which parameter stands where, and on which scale: mu, the gamma of each group but the reference
 * group, then omega, beta, c2, c4, d0, d1, tau.
 */
final class Layout {

  private static final String MU = "mu";
  private static final String GAMMA = "gamma.";

  /** The parameters that all men share, in the order of {@link Point} from omega on. */
  static final List<String> SHARED = List.of("omega", "beta", "c2", "c4", "d0", "d1", "tau");

  private final String reference;
  private final List<String> names;
  private final List<Scale> scales;

  /** Where the gamma of each group stands; 0, as mu, for the reference group. */
  private final int[] placeOfGroup;

  /**
   * The layout for courses.
   *
   * @param groups in the order of the courses
   * @param reference one of them
   * @param scaleOfD1 plain where it may be 0, the logarithm where it is drawn
   */
  Layout(List<String> groups, String reference, Scale scaleOfD1) {
    this.reference = reference;
    List<String> others =
        groups.stream().filter(group -> !group.equals(reference)).sorted().toList();
    names =
        Stream.of(Stream.of(MU), others.stream().map(GAMMA::concat), SHARED.stream())
            .flatMap(part -> part)
            .toList();
    var scaled = new ArrayList<Scale>();
    for (int i = 0; i <= others.size(); i++) {
      scaled.add(Scale.PLAIN);
    }
    scaled.addAll(
        List.of(
            Scale.LOG,
            Scale.LOG,
            Scale.LOG_OF_NEGATIVE,
            Scale.LOG,
            Scale.PLAIN,
            scaleOfD1,
            Scale.LOG));
    scales = List.copyOf(scaled);
    placeOfGroup = groups.stream().mapToInt(group -> 1 + others.indexOf(group)).toArray();
  }

  List<String> names() {
    return names;
  }

  int size() {
    return names.size();
  }

  Scale scale(int place) {
    return scales.get(place);
  }

  int place(String name) {
    return names.indexOf(name);
  }

  /** Where a parameter of {@link Point} other than the mean stands. */
  int place(int slope) {
    return size() - Point.COUNT + slope;
  }

  double[] natural(double[] scaled) {
    double[] natural = new double[scaled.length];
    for (int i = 0; i < scaled.length; i++) {
      natural[i] = scales.get(i).natural(scaled[i]);
    }
    return natural;
  }

  double[] scaled(double[] natural) {
    double[] scaled = new double[natural.length];
    for (int i = 0; i < natural.length; i++) {
      scaled[i] = scales.get(i).scaled(natural[i]);
    }
    return scaled;
  }

  /** The parameters as one man's reports see them. */
  Point point(double[] scaled) {
    double[] natural = natural(scaled);
    double[] means = new double[placeOfGroup.length];
    for (int group = 0; group < means.length; group++) {
      int place = placeOfGroup[group];
      means[group] = place == 0 ? natural[0] : natural[0] + natural[place];
    }
    return new Point(
        means,
        natural[place(Point.OMEGA)],
        natural[place(Point.BETA)],
        natural[place(Point.C2)],
        natural[place(Point.C4)],
        natural[place(Point.D0)],
        natural[place(Point.D1)],
        natural[place(Point.TAU)]);
  }

  /**
   * The population with these parameters.
   *
   * @throws IllegalArgumentException if one of them lies outside the {@link Ranges}
   */
  Population population(double[] scaled) {
    double[] natural = natural(scaled);
    var values = new TreeMap<String, Double>();
    for (int place = 0; place < natural.length; place++) {
      values.put(names.get(place), natural[place]);
    }
    return population(reference, values);
  }

  /** The population with these parameters, by the names of a layout. */
  static Population population(String reference, Map<String, Double> values) {
    var gammas = new TreeMap<String, Double>();
    gammas.put(reference, 0.0);
    values.forEach(
        (name, value) -> {
          if (name.startsWith(GAMMA)) {
            gammas.put(name.substring(GAMMA.length()), value);
          }
        });
    return new Population(
        value(values, MU),
        gammas,
        value(values, "omega"),
        value(values, "beta"),
        value(values, "c2"),
        value(values, "c4"),
        value(values, "d0"),
        value(values, "d1"),
        value(values, "tau"));
  }

  private static double value(Map<String, Double> values, String name) {
    return values.getOrDefault(name, Double.NaN);
  }

  /** Value and derivatives by the scaled parameters, from the sums of each group. */
  Curved curved(double[] scaled, List<BlockSums> sumsOfGroups) {
    double value = 0;
    double[] gradient = new double[size()];
    double[][] hessian = new double[size()][size()];
    for (int group = 0; group < placeOfGroup.length; group++) {
      BlockSums sums = sumsOfGroups.get(group);
      value += sums.log;
      add(sums, gradient, hessian);
      if (placeOfGroup[group] > 0) {
        addGamma(sums, placeOfGroup[group], gradient, hessian);
      }
    }
    for (int row = 0; row < size(); row++) {
      double slope = scales.get(row).slope(scaled[row]);
      for (int column = 0; column <= row; column++) {
        hessian[row][column] *= slope * scales.get(column).slope(scaled[column]);
        hessian[column][row] = hessian[row][column];
      }
      hessian[row][row] += gradient[row] * scales.get(row).curvature(scaled[row]);
      gradient[row] *= slope;
    }
    return new Curved(value, gradient, hessian);
  }

  /** Adds the sums as if their mean were mu; lower triangle only. */
  private void add(BlockSums sums, double[] gradient, double[][] hessian) {
    for (int row = 0; row < Point.COUNT; row++) {
      int to = row == 0 ? 0 : place(row);
      gradient[to] += sums.first[row];
      for (int column = 0; column <= row; column++) {
        int other = column == 0 ? 0 : place(column);
        hessian[to][other] += sums.second[Point.pair(column, row)];
      }
    }
  }

  /** What is left to add where the mean is mu + gamma. */
  private void addGamma(BlockSums sums, int gamma, double[] gradient, double[][] hessian) {
    double meanMean = sums.second[Point.pair(Point.MEAN, Point.MEAN)];
    gradient[gamma] += sums.first[Point.MEAN];
    hessian[gamma][gamma] += meanMean;
    hessian[gamma][0] += meanMean;
    for (int shared = 1; shared < Point.COUNT; shared++) {
      hessian[place(shared)][gamma] += sums.second[Point.pair(Point.MEAN, shared)];
    }
  }

  /** How a parameter is written where it is searched or drawn, so that every number is allowed. */
  enum Scale {
    PLAIN,
    LOG,
    LOG_OF_NEGATIVE;

    /** The parameter itself. */
    double natural(double scaled) {
      return switch (this) {
        case PLAIN -> scaled;
        case LOG -> Math.exp(scaled);
        case LOG_OF_NEGATIVE -> -Math.exp(scaled);
      };
    }

    double scaled(double natural) {
      return switch (this) {
        case PLAIN -> natural;
        case LOG -> Math.log(natural);
        case LOG_OF_NEGATIVE -> Math.log(-natural);
      };
    }

    /** The first derivative of the parameter itself, which for the exponentials is it again. */
    double slope(double scaled) {
      return this == PLAIN ? 1 : natural(scaled);
    }

    /** The second derivative. */
    double curvature(double scaled) {
      return this == PLAIN ? 0 : natural(scaled);
    }
  }
}
