package rungwise.dosing.screening;

import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/**
 * The total of a five-question score of erectile function. Only the total is kept: the questions
 * themselves are under copyright.
 *
 * @param total 1 to 25; the bands start at 5
 */
public record ErectileScore(int total) {

  private static final int LOWEST = 1;
  private static final int HIGHEST = 25;

  /** How severe it is. */
  public enum Band {
    BELOW_THE_BANDS("below the published bands", 1),
    SEVERE("severe", 5),
    MODERATE("moderate", 8),
    MILD_TO_MODERATE("mild to moderate", 12),
    MILD("mild", 17),
    NONE("none", 22);

    /** The bands of the five-question total. */
    public static final Source SOURCE = Source.read(Citation.RHODEN_2002, "bands of the total");

    private final String words;
    private final int from;

    Band(String words, int from) {
      this.words = words;
      this.from = from;
    }

    public String words() {
      return words;
    }
  }

  public ErectileScore {
    if (total < LOWEST || total > HIGHEST) {
      throw new IllegalArgumentException("bug: a score of " + total);
    }
  }

  /** The score of a total; none outside 1 to 25. */
  public static Optional<ErectileScore> of(int total) {
    return total < LOWEST || total > HIGHEST
        ? Optional.empty()
        : Optional.of(new ErectileScore(total));
  }

  public Band band() {
    Band found = Band.BELOW_THE_BANDS;
    for (Band band : Band.values()) {
      if (total >= band.from) {
        found = band;
      }
    }
    return found;
  }
}
