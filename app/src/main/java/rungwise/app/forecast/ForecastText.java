package rungwise.app.forecast;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rungwise.dosing.response.Delivery;
import rungwise.dosing.response.Forecast;

/** The answer for a reader: a table for each patient, with ranges. */
public final class ForecastText {

  private static final double PERCENT = 100;
  private static final double SMALLEST = 0.1;
  private static final double LARGEST = 99.9;
  private static final int PLACES_OF_REQUIREMENT = 3;
  private static final String HEAD =
      "  %-9s %-22s %-22s %-22s %-22s %s"
          .formatted(
              "volume",
              "useful",
              "and 60 min or more",
              "and 120 min or more",
              "and 240 min or more",
              "median minutes");

  private static final String DELIVERED =
      "Below each volume: the same averaged over what may be delivered, each part of the error"
          + " budget uniform between its limits.";

  private ForecastText() {}

  /** The answer, line by line. */
  public static List<String> of(ForecastAnswer answer) {
    var lines = new ArrayList<String>();
    lines.add("Forecast by the response model: " + ForecastAnswer.NOTICE + ".");
    lines.add(
        "Population: "
            + answer.population()
            + (answer.version().isPresent() ? " version " + answer.version().getAsInt() : "")
            + ". Strength 1: "
            + answer.preparation()
            + ". In brackets: the range by this model for nine in ten such men. Percent.");
    if (!answer.doubts().isEmpty()) {
      lines.add("Not to be relied on, because the population is doubted:");
      answer.doubts().forEach(doubt -> lines.add("  " + doubt));
    }
    if (answer.leftOut() > 0) {
      lines.add("Left out, being of another preparation: " + answer.leftOut() + " lines.");
    }
    if (isWithDelivery(answer)) {
      lines.add(DELIVERED);
    }
    for (ForecastAnswer.Patient patient : answer.patients()) {
      lines.add("");
      lines.add(
          patient
                  .name()
                  .map(name -> "Patient " + name)
                  .orElse("A man of the group " + patient.group() + " before his first injection")
              + ": requirement "
              + decimal(patient.mean(), PLACES_OF_REQUIREMENT)
              + ", standard deviation "
              + decimal(patient.deviation(), PLACES_OF_REQUIREMENT));
      lines.add(HEAD);
      for (ForecastAnswer.Line line : patient.lines()) {
        lines.add(row(line));
        line.delivered().ifPresent(delivered -> lines.addAll(delivered(delivered)));
      }
    }
    return List.copyOf(lines);
  }

  private static boolean isWithDelivery(ForecastAnswer answer) {
    return answer.patients().stream()
        .flatMap(patient -> patient.lines().stream())
        .anyMatch(line -> line.delivered().isPresent());
  }

  /** The averages, and the parts of the error budget. */
  private static List<String> delivered(ForecastAnswer.Delivered delivered) {
    Forecast mean = delivered.forecast();
    Delivery budget = delivered.budget();
    return List.of(
        String.format(
            Locale.ROOT,
            "  %-9s %-22s %-22s %-22s %s",
            "delivered",
            percent(mean.useful()),
            percent(mean.useful60()),
            percent(mean.useful120()),
            percent(mean.useful240())),
        "    reading "
            + part(budget.reading())
            + ", barrel "
            + part(budget.barrel())
            + ", label "
            + part(budget.label())
            + " either way, lost up to "
            + part(budget.mostLost())
            + ": between "
            + part(budget.least())
            + " and "
            + part(budget.most())
            + " of what is meant");
  }

  private static String row(ForecastAnswer.Line line) {
    Forecast mean = line.forecast();
    Forecast low = line.range().low();
    Forecast high = line.range().high();
    return String.format(
        Locale.ROOT,
        "  %-9s %-22s %-22s %-22s %-22s %s",
        line.volume(),
        cell(mean.useful(), low.useful(), high.useful()),
        cell(mean.useful60(), low.useful60(), high.useful60()),
        cell(mean.useful120(), low.useful120(), high.useful120()),
        cell(mean.useful240(), low.useful240(), high.useful240()),
        decimal(line.medianMinutes(), 0));
  }

  /** "12.5 (3.1 to 40.2)": a tenth of a percent is far below what the model knows. */
  private static String cell(double mean, double low, double high) {
    String lower = percent(low);
    String upper = percent(high);
    return percent(mean) + " (" + (lower.equals(upper) ? lower : lower + " to " + upper) + ")";
  }

  /** No chance is said to be none or all: a model does not know that. */
  private static String percent(double probability) {
    double number = probability * PERCENT;
    if (number < SMALLEST) {
      return "<0.1";
    }
    return number > LARGEST ? ">99.9" : decimal(number, 1);
  }

  private static String part(double ofOne) {
    return decimal(ofOne * PERCENT, 1);
  }

  private static String decimal(double number, int places) {
    return BigDecimal.valueOf(number).setScale(places, RoundingMode.HALF_UP).toPlainString();
  }
}
