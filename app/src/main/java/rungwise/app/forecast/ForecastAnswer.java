package rungwise.app.forecast;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import rungwise.dosing.response.Delivery;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.ForecastRange;
import rungwise.quantities.Volume;

/**
 * What was found for each patient of a file.
 *
 * @param population what the population is called
 * @param version of the population, where its file says one
 * @param preparation the preparation whose strength is 1
 * @param doubts what whoever made the population says against its use
 * @param leftOut how many lines of the history are of a preparation that was not chosen
 */
public record ForecastAnswer(
    String population,
    OptionalInt version,
    String preparation,
    List<String> doubts,
    int leftOut,
    List<Patient> patients) {

  /** Stands on every output: nothing here has asked a guard. */
  public static final String NOTICE = "no safety checks were made";

  /**
   * One patient.
   *
   * @param name what the file calls him; nothing for a man who has not injected yet
   * @param group of his aetiology, as the population calls it
   * @param injections how many of his the forecast rests on
   * @param mean the mean of his requirement
   * @param deviation its standard deviation
   */
  public record Patient(
      Optional<String> name,
      String group,
      int injections,
      double mean,
      double deviation,
      List<Line> lines) {
    public Patient {
      lines = List.copyOf(lines);
    }
  }

  /**
   * One volume.
   *
   * @param range between what the forecast lies for nine in ten such men
   * @param medianMinutes of a useful response
   * @param delivered where it was asked for: what may reach him
   */
  public record Line(
      Volume volume,
      Forecast forecast,
      ForecastRange range,
      double medianMinutes,
      Optional<Delivered> delivered) {}

  /**
   * One volume with its error budget.
   *
   * @param budget how far the amount that reaches him may lie from the one that is meant
   * @param forecast averaged over the budget
   */
  public record Delivered(Delivery budget, Forecast forecast) {}

  public ForecastAnswer {
    doubts = List.copyOf(doubts);
    patients = List.copyOf(patients);
  }
}
