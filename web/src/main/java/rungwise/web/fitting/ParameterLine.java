package rungwise.web.fitting;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.fitting.FitResult;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.known.AetiologyGroup;

/**
 * One parameter of a fit in words.
 *
 * @param error its standard error; "none" where it has none
 * @param mean of the posterior; empty where there is none, as the next two
 */
public record ParameterLine(
    String name,
    String meaning,
    String estimate,
    String error,
    String mean,
    String deviation,
    String effective) {

  private static final int PLACES = 3;
  private static final String GAMMA = "gamma.";

  private static final Map<String, String> MEANINGS =
      Map.of(
          "mu", "requirement of the reference group",
          "omega", "how far men of a group differ",
          "beta", "how steep firmness rises",
          "c2", "threshold of grade 2",
          "c4", "threshold of grade 4",
          "d0", "duration where half are usable",
          "d1", "how duration rises with the dose",
          "tau", "how far durations of one man differ");

  static List<ParameterLine> of(FitResult result) {
    return result.fit().parameters().entrySet().stream()
        .map(
            one ->
                line(
                    one.getKey(),
                    one.getValue(),
                    result
                        .posterior()
                        .map(Posterior::parameters)
                        .map(all -> all.get(one.getKey()))))
        .toList();
  }

  private static ParameterLine line(
      String name, Fit.Estimate estimate, Optional<Posterior.Known> known) {
    return new ParameterLine(
        name,
        meaning(name),
        decimal(estimate.value(), PLACES),
        estimate.error().isPresent() ? decimal(estimate.error().getAsDouble(), PLACES) : "none",
        known.map(one -> decimal(one.mean(), PLACES)).orElse(""),
        known.map(one -> decimal(one.deviation(), PLACES)).orElse(""),
        known.map(one -> decimal(one.effective(), 0)).orElse(""));
  }

  private static String meaning(String name) {
    return name.startsWith(GAMMA)
        ? "what men need more whose aetiology is " + group(name.substring(GAMMA.length()))
        : MEANINGS.getOrDefault(name, "");
  }

  static String group(String token) {
    return AetiologyGroup.of(token).map(AetiologyGroup::words).orElse(token);
  }

  static String decimal(double number, int places) {
    BigDecimal rounded = BigDecimal.valueOf(number).setScale(places, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
