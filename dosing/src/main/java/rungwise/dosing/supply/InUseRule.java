package rungwise.dosing.supply;

/**
 * How long an opened vial may be used. It is what the pharmacy or the label says and is never
 * derived: 28 days belong only to a preserved vial whose maker says nothing else.
 */
public sealed interface InUseRule {

  /** One injection, then it is thrown away. */
  record SingleUse() implements InUseRule {}

  /**
   * A number of days after it was first opened.
   *
   * @param days 1 to 365
   */
  record DaysAfterOpening(int days) implements InUseRule {

    public static final int MOST = 365;

    public DaysAfterOpening {
      if (days < 1 || days > MOST) {
        throw new IllegalArgumentException("bug: " + days + " days after opening");
      }
    }
  }

  /** Nobody has said. Until somebody does, an opened vial is not used again. */
  record NotStated() implements InUseRule {}

  /** The rule as a clinician reads it. */
  default String words() {
    return switch (this) {
      case SingleUse once -> "single use";
      case DaysAfterOpening limit ->
          limit.days() == 1 ? "1 day after opening" : limit.days() + " days after opening";
      case NotStated unknown -> "not stated: ask the pharmacy";
    };
  }
}
