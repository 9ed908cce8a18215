package rungwise.clinic.supply;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SequencedMap;
import rungwise.clinic.befell.VialWord.How;
import rungwise.clinic.befell.VialWord.Place;

/**
 * What befell a vial, as typed.
 *
 * @param what one of {@link #choices}
 * @param day a date
 * @param celsius a whole number; only of a warm vial, and may be empty
 * @param least whole hours; only of a warm vial, and may be empty
 * @param most whole hours; only of a warm vial, and may be empty
 * @param reason who says so
 */
public record BefellDraft(
    String what, String day, String celsius, String least, String most, String reason) {

  public static final String WHAT = "what";
  public static final String DAY = "day";
  public static final String CELSIUS = "celsius";
  public static final String LEAST = "leastHours";
  public static final String MOST = "mostHours";

  static final String WARM = "WARM";

  /** What may have happened, with its words, in the order of a form. */
  public static SequencedMap<String, String> choices() {
    var choices = new LinkedHashMap<>(Map.of(WARM, "it was warm"));
    for (Place place : Place.values()) {
      choices.put(
          place.name(), place == Place.NOT_KNOWN ? place.words() : "it was " + place.words());
    }
    for (How how : How.values()) {
      choices.put(how.name(), how == How.EMPTY ? "it is empty" : "it was " + how.words());
    }
    return choices;
  }
}
