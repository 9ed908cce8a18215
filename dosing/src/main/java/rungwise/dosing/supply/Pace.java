package rungwise.dosing.supply;

/**
 * How often he injects.
 *
 * @param perWeek more than 0
 */
public record Pace(double perWeek) {

  private static final int WEEK = 7;

  /** How far under a whole number a product of his pace may fall by rounding alone. */
  private static final double ROUNDING = 1e-9;

  private static final int PERCENT = 100;

  public Pace {
    if (!(perWeek > 0 && perWeek < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("bug: " + perWeek + " injections a week");
    }
  }

  /** How many days some doses last. */
  public double daysOf(long doses) {
    return doses / perWeek * WEEK;
  }

  /** How many whole injections fall into some days. */
  public long dosesIn(long days) {
    return (long) Math.floor((double) days / WEEK * perWeek + ROUNDING);
  }

  /** What becomes of some doses that may be used for so many days. */
  public Used use(long doses, long days) {
    return new Used(doses, Math.min(doses, dosesIn(days)));
  }

  /** After how many days he needs the next vial: when it is empty, or may be used no longer. */
  public double daysToNext(long doses, long days) {
    return Math.min(daysOf(doses), (double) days);
  }

  /**
   * What becomes of a vial.
   *
   * @param doses how many it holds
   * @param used how many of them are injected while it may be used
   */
  public record Used(long doses, long used) {

    public long wasted() {
      return doses - used;
    }

    public double wastedPercent() {
      return (double) wasted() * PERCENT / doses;
    }

    /** What one injection costs, if the vial costs so much. */
    public double costOfEach(double vial) {
      return vial / used;
    }
  }
}
