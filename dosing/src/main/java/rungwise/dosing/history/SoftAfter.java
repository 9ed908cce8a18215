package rungwise.dosing.history;

import rungwise.dosing.known.DurationLimits;
import rungwise.quantities.TimeSpan;

/** How long after the injection the penis was fully soft again. */
public sealed interface SoftAfter {

  /** Known to the minute. */
  record Exactly(TimeSpan duration) implements SoftAfter {}

  /** Still firm when last seen. How it ended has not been asked yet. */
  record AtLeast(TimeSpan duration) implements SoftAfter {}

  /**
   * Between two times: not less than the first, and less than the second, which is left out.
   *
   * @param from may be 0
   * @param before more than from
   */
  record Between(TimeSpan from, TimeSpan before) implements SoftAfter {
    public Between {
      if (!before.isMoreThan(from)) {
        throw new IllegalArgumentException("bug: soft between " + from + " and " + before);
      }
    }
  }

  /** Not recorded. */
  record NotKnown() implements SoftAfter {}

  /**
   * Whether it lasted, or may have lasted, that long or longer. "At least" is read as without
   * limit. A duration that was not recorded says nothing here: {@link #isKnown()} does.
   */
  default boolean mayReach(TimeSpan limit) {
    return switch (this) {
      case Exactly exactly -> !exactly.duration().isLessThan(limit);
      case AtLeast atLeast -> true;
      case Between between -> between.before().isMoreThan(limit);
      case NotKnown notKnown -> false;
    };
  }

  /** Whether it lasted, or may have lasted, longer than that. */
  default boolean mayPass(TimeSpan limit) {
    return switch (this) {
      case Exactly exactly -> exactly.duration().isMoreThan(limit);
      case AtLeast atLeast -> true;
      case Between between -> between.before().isMoreThan(limit);
      case NotKnown notKnown -> false;
    };
  }

  /** Whether it says 4 hours in so many words: still firm at 30 minutes says nothing yet. */
  default boolean saysEmergency() {
    TimeSpan limit = DurationLimits.EMERGENCY.value();
    return this instanceof AtLeast(TimeSpan seen) ? !seen.isLessThan(limit) : mayReach(limit);
  }

  /**
   * Whether every end that this leaves possible was possible by what was said before: at least 90
   * min, then 100 min; not recorded, then 45 min. What was not recorded leaves every end possible.
   */
  default boolean isWithin(SoftAfter said) {
    return switch (said) {
      case Exactly exactly -> equals(exactly);
      case AtLeast atLeast -> isKnown() && !earliest().isLessThan(atLeast.duration());
      case Between between ->
          !earliest().isLessThan(between.from()) && isKnownBelow(between.before());
      case NotKnown notKnown -> true;
    };
  }

  private TimeSpan earliest() {
    return switch (this) {
      case Exactly exactly -> exactly.duration();
      case AtLeast atLeast -> atLeast.duration();
      case Between between -> between.from();
      case NotKnown notKnown -> TimeSpan.ofMinutes(0);
    };
  }

  /** Whether it is known to have ended before that. */
  default boolean isKnownBelow(TimeSpan limit) {
    return switch (this) {
      case Exactly exactly -> exactly.duration().isLessThan(limit);
      case Between between -> !between.before().isMoreThan(limit);
      case AtLeast atLeast -> false;
      case NotKnown notKnown -> false;
    };
  }

  /** Whether it is known that it ended, to the minute or between two times. */
  default boolean hasKnownEnd() {
    return this instanceof Exactly || this instanceof Between;
  }

  /** Whether anything was recorded. */
  default boolean isKnown() {
    return !(this instanceof NotKnown);
  }

  /** "soft after 45 min". */
  default String words() {
    return switch (this) {
      case Exactly exactly -> "soft after " + exactly.duration();
      case AtLeast atLeast -> "still firm at " + atLeast.duration() + ", end not known";
      case Between between -> "soft between " + between.from() + " and " + between.before();
      case NotKnown notKnown -> "duration not known";
    };
  }
}
