package rungwise.app.forecast;

import java.util.List;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.ForecastRange;
import rungwise.quantities.Volume;

/**
 * What was found for each patient of a file.
 *
 * @param population what the population is called
 */
public record ForecastAnswer(String population, List<Patient> patients) {

  /** Stands on every output: nothing here has asked a guard. */
  public static final String NOTICE = "no safety checks were made";

  /**
   * One patient.
   *
   * @param name what the file calls him
   * @param mean the mean of his requirement
   * @param deviation its standard deviation
   */
  public record Patient(String name, double mean, double deviation, List<Line> lines) {
    public Patient {
      lines = List.copyOf(lines);
    }
  }

  /**
   * One volume.
   *
   * @param range between what the forecast lies for nine in ten such men
   * @param medianMinutes of a useful response
   */
  public record Line(Volume volume, Forecast forecast, ForecastRange range, double medianMinutes) {}

  public ForecastAnswer {
    patients = List.copyOf(patients);
  }
}
