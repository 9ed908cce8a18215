package rungwise.app.forecast;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rungwise.dosing.response.Forecast;

/** The answer for a reader: a table for each patient, with ranges. */
public final class ForecastText {

  private static final double PERCENT = 100;
  private static final int PLACES_OF_REQUIREMENT = 3;
  private static final String HEAD =
      "  %-9s %-20s %-20s %-20s %-20s %s"
          .formatted(
              "volume",
              "useful",
              "and 60 min or more",
              "and 120 min or more",
              "and 240 min or more",
              "median minutes");

  private ForecastText() {}

  /** The answer, line by line. */
  public static List<String> of(ForecastAnswer answer) {
    var lines = new ArrayList<String>();
    lines.add("Forecast by the response model: " + ForecastAnswer.NOTICE + ".");
    lines.add(
        "Population: "
            + answer.population()
            + ". In brackets: the range for nine in ten such men. Percent.");
    for (ForecastAnswer.Patient patient : answer.patients()) {
      lines.add("");
      lines.add(
          "Patient "
              + patient.name()
              + ": requirement "
              + decimal(patient.mean(), PLACES_OF_REQUIREMENT)
              + ", standard deviation "
              + decimal(patient.deviation(), PLACES_OF_REQUIREMENT));
      lines.add(HEAD);
      patient.lines().forEach(line -> lines.add(row(line)));
    }
    return List.copyOf(lines);
  }

  private static String row(ForecastAnswer.Line line) {
    Forecast mean = line.forecast();
    Forecast low = line.range().low();
    Forecast high = line.range().high();
    return String.format(
        Locale.ROOT,
        "  %-9s %-20s %-20s %-20s %-20s %s",
        line.volume(),
        cell(mean.useful(), low.useful(), high.useful()),
        cell(mean.useful60(), low.useful60(), high.useful60()),
        cell(mean.useful120(), low.useful120(), high.useful120()),
        cell(mean.useful240(), low.useful240(), high.useful240()),
        decimal(line.medianMinutes(), 0));
  }

  /** "12.5 (3.1 to 40.2)": a tenth of a percent is far below what the model knows. */
  private static String cell(double mean, double low, double high) {
    return percent(mean) + " (" + percent(low) + " to " + percent(high) + ")";
  }

  private static String percent(double probability) {
    return decimal(probability * PERCENT, 1);
  }

  private static String decimal(double number, int places) {
    return BigDecimal.valueOf(number).setScale(places, RoundingMode.HALF_UP).toPlainString();
  }
}
