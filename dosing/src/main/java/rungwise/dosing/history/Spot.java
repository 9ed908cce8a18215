package rungwise.dosing.history;

import java.util.Set;
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

  /** What an hour on the clock is to an injection. */
  public enum Standing {
    /** Where it belongs: in a plan, on a sheet and in practice only these. */
    RIGHT(""),
    /** Kept, and pointed out. */
    BESIDE_NERVES("beside the nerves"),
    /** Kept, and taught again. */
    NOT_ALLOWED("not an allowed place");

    private final String words;

    Standing(String words) {
      this.words = words;
    }

    /** What is wrong with it; empty if nothing is. */
    public String words() {
      return words;
    }
  }

  /** Ten and two o'clock, away from urethra and glans. That 12 is avoided is from memory. */
  public static final Source SOURCE =
      Source.read(Citation.ALBAUGH_2006, "10 or 2 o'clock, away from urethra and glans");

  /** Nine and three o'clock are no less usual. */
  public static final Source BESIDE_SOURCE =
      new Source.CommonPractice("9 or 3 o'clock, the middle of each side");

  private static final int HOURS = 12;
  private static final int URETHRA = 6;
  private static final int RIGHT_SIDE = 10;
  private static final int LEFT_SIDE = 2;
  private static final Set<Integer> RIGHT_HOURS = Set.of(RIGHT_SIDE, LEFT_SIDE, 9, 3);
  private static final Set<Integer> NEAR_THE_TOP = Set.of(11, 1);

  public Spot {
    if (hour < 1 || hour > HOURS) {
      throw new IllegalArgumentException("bug: " + hour + " o'clock");
    }
  }

  /** What its hour is to an injection. */
  public Standing standing() {
    return standing(hour);
  }

  /** Nerves and vessels run at 12, the urethra at 6 with the skin beside it: never there. */
  public static Standing standing(int hour) {
    if (RIGHT_HOURS.contains(hour)) {
      return Standing.RIGHT;
    }
    return NEAR_THE_TOP.contains(hour) ? Standing.BESIDE_NERVES : Standing.NOT_ALLOWED;
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
