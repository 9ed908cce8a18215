package rungwise.dosing.supply;

import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/** Where a label says that a vial is kept. */
public enum Storage {
  ROOM("at room temperature", 20, 25),
  REFRIGERATOR("in the refrigerator", 2, 8),
  FREEZER("in the freezer", -25, -10);

  /** Between which degrees a room may stray, if its mean kinetic temperature stays within it. */
  public static final Sourced<Range> ROOM_MAY_STRAY =
      new Sourced<>(new Range(15, 30), Source.secondary(Citation.USP_STORAGE, "room, excursions"));

  /**
   * Degrees Celsius.
   *
   * @param most not less than the least
   */
  public record Range(int least, int most) {

    public boolean holds(double celsius) {
      return celsius >= least && celsius <= most;
    }
  }

  private final String words;
  private final Range celsius;

  Storage(String words, int least, int most) {
    this.words = words;
    this.celsius = new Range(least, most);
  }

  public String words() {
    return words;
  }

  public Sourced<Range> celsius() {
    return new Sourced<>(celsius, Source.secondary(Citation.USP_STORAGE, words));
  }

  /** Whether a room that strayed to some degrees still was one. */
  public static boolean isStillRoom(double celsius, double meanKinetic) {
    return ROOM_MAY_STRAY.value().holds(celsius) && meanKinetic <= ROOM.celsius.most();
  }
}
