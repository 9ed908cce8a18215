package rungwise.dosing.strength;

/**
 * How fast a drug is lost at one warmth.
 *
 * @param perTime the part that is lost in one unit of time, 0 or more; the unit is the caller's
 */
public record Decay(Order order, double perTime) {

  /** What the loss of a moment depends on. */
  public enum Order {
    /** On how much there still is: equal times leave equal parts. */
    FIRST,
    /** On nothing: equal times take equal amounts. */
    ZERO
  }

  public Decay {
    if (!(perTime >= 0 && perTime < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("bug: a rate of " + perTime);
    }
  }

  /**
   * The rate by which a part is left after a time.
   *
   * @param left more than 0 and at most 1
   * @param time more than 0
   */
  public static Decay leaving(Order order, double left, double time) {
    if (!(left > 0 && left <= 1 && time > 0)) {
      throw new IllegalArgumentException("bug: " + left + " left after " + time);
    }
    return switch (order) {
      case FIRST -> new Decay(order, -Math.log(left) / time);
      case ZERO -> new Decay(order, (1 - left) / time);
    };
  }

  /** The part that is left after a time, from 1 down to 0. */
  public double left(double time) {
    return switch (order) {
      case FIRST -> Math.exp(-perTime * time);
      case ZERO -> Math.max(0, 1 - perTime * time);
    };
  }

  /** After which time a part is left; never where nothing is lost. */
  public double timeTo(double left) {
    return switch (order) {
      case FIRST -> -Math.log(left) / perTime;
      case ZERO -> (1 - left) / perTime;
    };
  }
}
