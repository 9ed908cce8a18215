package rungwise.app.fit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import rungwise.clinic.fitting.DoubtWords;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Posterior;

/** The answer for a reader: a table of the parameters, and every doubt. */
public final class FitText {

  private static final int PLACES = 4;
  private static final int PLACES_OF_LOG = 6;
  private static final String ROW = "  %-28s %14s %14s %14s %14s";

  private FitText() {}

  /** The answer, line by line. */
  public static List<String> of(FitAnswer answer) {
    List<String> lines = beginning(answer);
    lines.add("");
    lines.add(head(answer));
    answer.fit().parameters().forEach((name, estimate) -> lines.add(row(answer, name, estimate)));
    answer
        .posterior()
        .ifPresent(
            posterior ->
                lines.add(
                    "The posterior rests on "
                        + posterior.draws().count()
                        + " weighed draws, worth at least "
                        + decimal(posterior.leastEffective(), 0)
                        + " independent ones."));
    answer
        .predicted()
        .ifPresent(predicted -> lines.addAll(CheckText.of(predicted, answer.patients())));
    lines.add("");
    if (answer.doubts().isEmpty()) {
      lines.add("Nothing was found that speaks against laying it before the programme lead.");
      if (answer.predicted().isEmpty()) {
        lines.add("Whether the reports follow the model was not looked at: --check does it.");
      }
    } else {
      lines.add("Not to be signed:");
      answer.doubts().forEach(doubt -> lines.add("  " + DoubtWords.of(doubt)));
    }
    return List.copyOf(lines);
  }

  /** What was fitted to, and how well. */
  private static List<String> beginning(FitAnswer answer) {
    Fit fit = answer.fit();
    var lines = new ArrayList<String>();
    lines.add(
        "Fit of the response model to "
            + answer.file()
            + ": "
            + fit.courses()
            + " patients, "
            + fit.trials()
            + " injections.");
    lines.add("Strength 1: " + answer.preparation() + ".");
    if (answer.leftOut() > 0) {
      lines.add("Left out, being of another preparation: " + answer.leftOut() + " lines.");
    }
    lines.add(
        "Reference group: "
            + fit.reference()
            + ". Logarithm of the likelihood: "
            + decimal(fit.log(), PLACES_OF_LOG)
            + ". The result is not signed, and no advice uses it.");
    return lines;
  }

  private static String head(FitAnswer answer) {
    boolean isWide = answer.posterior().isPresent();
    return String.format(
            Locale.ROOT,
            ROW,
            "parameter",
            "estimate",
            "standard error",
            isWide ? "posterior mean" : "",
            isWide ? "deviation" : "")
        .stripTrailing();
  }

  private static String row(FitAnswer answer, String name, Fit.Estimate estimate) {
    var known = answer.posterior().map(Posterior::parameters).map(Map::entrySet);
    String mean = "";
    String deviation = "";
    if (known.isPresent()) {
      for (Map.Entry<String, Posterior.Known> one : known.get()) {
        if (one.getKey().equals(name)) {
          mean = decimal(one.getValue().mean(), PLACES);
          deviation = decimal(one.getValue().deviation(), PLACES);
        }
      }
    }
    return String.format(
            Locale.ROOT,
            ROW,
            name,
            decimal(estimate.value(), PLACES),
            estimate.error().isPresent() ? decimal(estimate.error().getAsDouble(), PLACES) : "none",
            mean,
            deviation)
        .stripTrailing();
  }

  private static String decimal(double number, int places) {
    return BigDecimal.valueOf(number).setScale(places, RoundingMode.HALF_UP).toPlainString();
  }
}
