package rungwise.dosing.history;

import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/**
 * Where on the shaft it was injected, as on a clock that faces the man: 12 is up, 6 is the urethra.
 *
 * @param side his own left or right
 * @param hour 1 to 12
 */
public record Spot(Side side, int hour) {

  /** His own side, whoever looks. */
  public enum Side {
    HIS_LEFT("his left"),
    HIS_RIGHT("his right");

    private final String words;

    Side(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    public Side other() {
      return this == HIS_LEFT ? HIS_RIGHT : HIS_LEFT;
    }
  }

  /** Ten and two o'clock, away from urethra and glans. That 12 is avoided is from memory. */
  public static final Source SOURCE =
      Source.read(Citation.ALBAUGH_2006, "10 or 2 o'clock, away from urethra and glans");

  private static final int HOURS = 12;
  private static final int URETHRA = 6;
  private static final int RIGHT_SIDE = 10;
  private static final int LEFT_SIDE = 2;
  private static final int FROM_NINE = 9;
  private static final int TO_THREE = 3;

  public Spot {
    if (hour < 1 || hour > HOURS) {
      throw new IllegalArgumentException("bug: " + hour + " o'clock");
    }
  }

  /** Nerves and vessels run at 12, the urethra at 6 with the skin below it: never there. */
  public boolean isAllowed() {
    return isAllowed(hour);
  }

  /** Whether any place at that hour may be used: the upper sides, from 9 to 11 and from 1 to 3. */
  public static boolean isAllowed(int hour) {
    return hour != HOURS && hour != URETHRA && (hour >= FROM_NINE || hour <= TO_THREE);
  }

  /** Whether the hour lies on that side; who faces him sees his right on the left, at 9. */
  public boolean isOnItsSide() {
    boolean isInTheMiddle = hour == HOURS || hour == URETHRA;
    boolean isHisLeft = hour < URETHRA;
    return isInTheMiddle || isHisLeft == (side == Side.HIS_LEFT);
  }

  /** The usual place on the other side: sides are used in turn. */
  public Spot next() {
    Side other = side.other();
    return new Spot(other, other == Side.HIS_RIGHT ? RIGHT_SIDE : LEFT_SIDE);
  }

  /** "his left, 2 o'clock". */
  public String words() {
    return side.words() + ", " + hour + " o'clock";
  }
}
