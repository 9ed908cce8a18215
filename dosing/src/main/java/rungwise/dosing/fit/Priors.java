package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rungwise.dosing.response.Population;
import rungwise.inference.Curved;

/**
 * Weak beliefs about the parameters before any course: normal curves for mu, gamma and d0, and for
 * the logarithms of omega, beta, -c2, c4, d1 and tau.
 *
 * <p>They are assumptions, wide enough that some hundred courses leave little of them: mu 0 with
 * deviation 2, each gamma 0 with 1, omega 0.7, beta 2, -c2 and c4 2, tau 0.5 each times or divided
 * by 2 (deviation 0.7 of the logarithm), d0 the logarithm of 40 minutes with 1, d1 0.5 times or
 * divided by 2.7 (deviation 1).
 */
public final class Priors {

  /** A parameter so many deviations away is taken for impossible. */
  static final double FARTHEST = 8;

  private static final double DEVIATION_OF_MU = 2;
  private static final double DEVIATION_OF_LOG = 0.7;
  private static final double MEDIAN_OMEGA = 0.7;
  private static final double MEDIAN_BETA = 2;
  private static final double MEDIAN_C = 2;
  private static final double MEDIAN_MINUTES = 40;
  private static final double MEDIAN_D1 = 0.5;
  private static final double MEDIAN_TAU = 0.5;

  private final double[] means;
  private final double[] deviations;

  /** For a layout on whose scale d1 stands as its logarithm. */
  Priors(Layout layout) {
    means = new double[layout.size()];
    deviations = new double[layout.size()];
    for (int place = 0; place < layout.place(Point.OMEGA); place++) {
      deviations[place] = place == 0 ? DEVIATION_OF_MU : 1;
    }
    set(layout.place(Point.OMEGA), MEDIAN_OMEGA, DEVIATION_OF_LOG);
    set(layout.place(Point.BETA), MEDIAN_BETA, DEVIATION_OF_LOG);
    set(layout.place(Point.C2), MEDIAN_C, DEVIATION_OF_LOG);
    set(layout.place(Point.C4), MEDIAN_C, DEVIATION_OF_LOG);
    set(layout.place(Point.D0), MEDIAN_MINUTES, 1);
    set(layout.place(Point.D1), MEDIAN_D1, 1);
    set(layout.place(Point.TAU), MEDIAN_TAU, DEVIATION_OF_LOG);
  }

  private void set(int place, double median, double deviation) {
    means[place] = Math.log(median);
    deviations[place] = deviation;
  }

  double mean(int place) {
    return means[place];
  }

  double deviation(int place) {
    return deviations[place];
  }

  /** Whether no parameter is farther away than {@link #FARTHEST}. */
  boolean isConceivable(double[] scaled) {
    boolean isNear = true;
    for (int i = 0; i < scaled.length; i++) {
      isNear &= Math.abs(scaled[i] - means[i]) <= FARTHEST * deviations[i];
    }
    return isNear;
  }

  /** The logarithm of the density, up to a constant. */
  double log(double[] scaled) {
    double sum = 0;
    for (int i = 0; i < scaled.length; i++) {
      double z = (scaled[i] - means[i]) / deviations[i];
      sum -= z * z / 2;
    }
    return sum;
  }

  /** The logarithm of a likelihood with its derivatives, and these beliefs added. */
  Curved added(Curved likelihood, double[] scaled) {
    double[] gradient = likelihood.gradient().clone();
    double[][] hessian = new double[scaled.length][];
    for (int i = 0; i < scaled.length; i++) {
      double precision = 1 / (deviations[i] * deviations[i]);
      gradient[i] -= (scaled[i] - means[i]) * precision;
      hessian[i] = likelihood.hessian()[i].clone();
      hessian[i][i] -= precision;
    }
    return new Curved(likelihood.value() + log(scaled), gradient, hessian);
  }

  /**
   * A parameter of a population that was assumed, moved by as much as is believed of it: one
   * deviation, on the scale on which the beliefs are normal, and never outside of what a population
   * may be.
   *
   * @param name such as "beta" or "gamma of mixed"
   * @param less the population with the smaller number
   * @param more the population with the larger number
   */
  public record Moved(String name, Population less, Population more) {}

  /** Stands for the name of every parameter. */
  public static final String EVERYTHING = "everything";

  private static final String GAMMA_OF = "gamma of ";

  /**
   * Each assumed parameter of a population, in the order of the model.
   *
   * @param assumed names of parameters, or {@link #EVERYTHING}; other words are left out
   */
  public static List<Moved> moved(Population population, Set<String> assumed) {
    String reference = referenceOf(population);
    var layout = new Layout(List.copyOf(population.gammas().keySet()), reference, Layout.Scale.LOG);
    double[] scaled = layout.scaled(natural(population, layout));
    var all = new ArrayList<Moved>();
    for (int place = 0; place < layout.size(); place++) {
      String name = layout.names().get(place).replace("gamma.", GAMMA_OF);
      if (assumed.contains(EVERYTHING) || assumed.contains(name)) {
        double by = new Priors(layout).deviation(place);
        all.add(
            new Moved(
                name,
                oneMoved(layout, reference, scaled, place, -by),
                oneMoved(layout, reference, scaled, place, by)));
      }
    }
    return all;
  }

  /** The group of which each other one is told; where several need the same, the first. */
  private static String referenceOf(Population population) {
    return population.gammas().entrySet().stream()
        .filter(gamma -> gamma.getValue() == 0)
        .map(Map.Entry::getKey)
        .sorted()
        .findFirst()
        .orElseThrow();
  }

  private static double[] natural(Population population, Layout layout) {
    Map<String, Double> values = new HashMap<>();
    population.gammas().forEach((group, gamma) -> values.put("gamma." + group, gamma));
    values.put("mu", population.mu());
    values.put("omega", population.omega());
    values.put("beta", population.beta());
    values.put("c2", population.c2());
    values.put("c4", population.c4());
    values.put("d0", population.d0());
    values.put("d1", population.d1());
    values.put("tau", population.tau());
    return layout.names().stream().mapToDouble(values::get).toArray();
  }

  private static Population oneMoved(
      Layout layout, String reference, double[] scaled, int place, double by) {
    var ranges = new Ranges(layout);
    double low = Math.min(ranges.low()[place], ranges.high()[place]);
    double high = Math.max(ranges.low()[place], ranges.high()[place]);
    double[] other = layout.natural(scaled);
    other[place] = layout.scale(place).natural(Math.clamp(scaled[place] + by, low, high));
    var values = new HashMap<String, Double>();
    for (int i = 0; i < other.length; i++) {
      values.put(layout.names().get(i), other[i]);
    }
    return Layout.population(reference, values);
  }
}
