package rungwise.dosing.fit;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import rungwise.dosing.draws.Covariance;
import rungwise.dosing.response.Population;

/**
 * The response model as it was fitted to courses by maximum marginal likelihood.
 *
 * @param reference the group whose gamma is 0
 * @param parameters by name, with gamma.NAME for each other group, in the order of the model; those
 *     of durations are missing where no duration is known
 * @param covariance of the parameters that have a standard error
 * @param log the logarithm of the probability of all grades, and of the density of durations in
 *     minutes, where it is largest
 * @param courses how many courses it was made from
 * @param trials how many injections
 * @param shares the part of each group among the courses
 * @param doubts what speaks against using it
 */
public record Fit(
    String reference,
    Map<String, Estimate> parameters,
    Covariance covariance,
    double log,
    int courses,
    int trials,
    Map<String, Double> shares,
    List<Doubt> doubts) {

  /**
   * A parameter as it was fitted.
   *
   * @param value on its natural scale
   * @param error its standard error, from the curvature at the top; nothing for a parameter at an
   *     end of its range, or where the curvature is not that of a top
   */
  public record Estimate(double value, OptionalDouble error) {}

  public Fit {
    parameters = Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
    shares = Collections.unmodifiableMap(new TreeMap<>(shares));
    doubts = List.copyOf(doubts);
  }

  /** What speaks against using it, and against its posterior where that was drawn. */
  public List<Doubt> doubts(Optional<Posterior> posterior) {
    return Stream.concat(
            doubts.stream(), posterior.stream().flatMap(drawn -> drawn.doubts().stream()))
        .toList();
  }

  /** The population that forecasts use; nothing where no duration is known. */
  public Optional<Population> population() {
    if (!parameters.keySet().containsAll(Layout.SHARED)) {
      return Optional.empty();
    }
    var values = new TreeMap<String, Double>();
    parameters.forEach((name, estimate) -> values.put(name, estimate.value()));
    return Optional.of(Layout.population(reference, values));
  }
}
