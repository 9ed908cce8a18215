package rungwise.clinic.forecast;

import java.util.Optional;
import rungwise.dosing.known.Dose;

/**
 * What one volume may do.
 *
 * @param place "one step above"; empty in a table of all volumes unless it is a step
 * @param happened what lasted, or may have lasted, 2 hours or more at this dose or less
 * @param useful a response of grade 3 or 4
 * @param useful60 such a response of 60 minutes or longer
 * @param useful120 such a response of 120 minutes or longer
 * @param useful240 such a response of 240 minutes or longer
 * @param medianMinutes the minutes that half of the useful responses pass, whole
 * @param closed the safety check that forbids it, if one does
 * @param held the safety check that holds it, if one does
 * @param isBeyondLimit whether a chance is above what the protocol allows
 */
public record ForecastLine(
    Dose dose,
    String place,
    Optional<String> happened,
    Chance useful,
    Chance useful60,
    Chance useful120,
    Chance useful240,
    long medianMinutes,
    Optional<String> closed,
    Optional<String> held,
    boolean isBeyondLimit) {

  private static final String AND = ", ";

  /** The same as a sentence. */
  public String words() {
    return dose.volumeAndMark()
        + (place.isEmpty() ? "" : AND + place)
        + happened.map(what -> ". It has happened: " + what + ". By the model").orElse("")
        + ": usable response "
        + useful.words()
        + " ("
        + useful.rangeWords()
        + "), and 1 h or longer "
        + useful60.words()
        + " ("
        + useful60.rangeWords()
        + "), 2 h or longer "
        + useful120.words()
        + " ("
        + useful120.rangeWords()
        + "), 4 h or longer "
        + useful240.words()
        + " ("
        + useful240.rangeWords()
        + "). If usable, half last longer than "
        + medianMinutes
        + " min."
        + closed
            .map(why -> " Closed: " + why)
            .or(() -> held.map(why -> " On hold: " + why))
            .orElse("")
        + (isBeyondLimit ? " Above the protocol's limit." : "");
  }
}
