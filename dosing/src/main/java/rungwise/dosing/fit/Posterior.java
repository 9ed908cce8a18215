package rungwise.dosing.fit;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rungwise.dosing.draws.WeightedDraws;
import rungwise.dosing.response.Population;

/**
 * What is known of the parameters after the courses, under weak beliefs before them ({@link
 * Priors}).
 *
 * @param parameters by name, in the order of the model
 * @param paretoK the shape of the tail of the draws' weights; up to 0.7 they can be trusted
 * @param draws all of them on the natural scales, each with its weight
 * @param sample {@link #SAMPLE} of them, taken in equal steps along the sum of their weights, so
 *     that each stands for as much as the others; none where no draw is a population of the model
 */
public record Posterior(
    Map<String, Known> parameters, double paretoK, WeightedDraws draws, List<Population> sample) {

  /** How many sets of parameters stand for all draws. */
  public static final int SAMPLE = 20;

  /** Above this shape the averages are not to be trusted (JMLR 25 (2024), number 72). */
  public static final double MOST_PARETO_K = 0.7;

  /** Of which parts of the posterior the quantiles are told. */
  public static final List<Double> PARTS = List.of(0.05, 0.25, 0.5, 0.75, 0.95);

  /**
   * One parameter on its natural scale.
   *
   * @param quantiles for each of {@link #PARTS}
   * @param effective how many independent draws would know its mean as well
   */
  public record Known(double mean, double deviation, List<Double> quantiles, double effective) {
    public Known {
      quantiles = List.copyOf(quantiles);
    }
  }

  public Posterior {
    parameters = Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
    sample = List.copyOf(sample);
  }

  /** The fewest effective draws of any parameter. */
  public double leastEffective() {
    return parameters.values().stream().mapToDouble(Known::effective).min().orElse(0);
  }

  /** What speaks against using it. */
  public List<Doubt> doubts() {
    return paretoK <= MOST_PARETO_K ? List.of() : List.of(new Doubt.HeavyTail(paretoK));
  }
}
