package rungwise.dosing.urgent;

import java.time.Instant;
import java.util.Optional;

/** One statement of when an erection began. */
public sealed interface Start {

  /**
   * Somebody said when; at one minute, or between two.
   *
   * @param earliest the first instant that the words can mean
   * @param latest the last one, that included
   */
  record Said(Instant earliest, Instant latest, Speaker by) implements Start {
    public Said {
      requireOrder(earliest, latest);
    }

    public static Said at(Instant instant, Speaker by) {
      return new Said(instant, instant, by);
    }
  }

  /**
   * The injection itself: what it caused did not begin before it.
   *
   * @param entry the entry of the record that tells it
   */
  record OfInjection(Instant earliest, Instant latest, String entry) implements Start {
    public OfInjection {
      requireOrder(earliest, latest);
    }
  }

  /**
   * Somebody was asked and could not say.
   *
   * @param lastSoft when it was last known to be soft; without it nothing says that it is less than
   *     4 hours
   */
  record NotKnown(Optional<Instant> lastSoft) implements Start {}

  /**
   * A statement that a clinician took back. It stays to be read and counts no more.
   *
   * @param reason why, in the clinician's words
   */
  record Struck(Start was, String reason) implements Start {
    public Struck {
      if (was instanceof Struck || reason.isBlank()) {
        throw new IllegalArgumentException("bug: " + was + " is struck twice or without a reason");
      }
    }
  }

  /** The first instant at which it may have begun by this statement alone. */
  default Optional<Instant> earliestInstant() {
    return switch (this) {
      case Said said -> Optional.of(said.earliest());
      case OfInjection injection -> Optional.of(injection.earliest());
      case NotKnown unknown -> unknown.lastSoft();
      case Struck struck -> Optional.empty();
    };
  }

  /** Whether by this statement it may have begun at any time before. */
  default boolean isOpenToThePast() {
    return this instanceof NotKnown unknown && unknown.lastSoft().isEmpty();
  }

  private static void requireOrder(Instant earliest, Instant latest) {
    if (latest.isBefore(earliest)) {
      throw new IllegalArgumentException("bug: from " + earliest + " back to " + latest);
    }
  }
}
