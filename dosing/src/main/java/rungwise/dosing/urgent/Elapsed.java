package rungwise.dosing.urgent;

import java.util.Optional;
import rungwise.dosing.known.DurationLimits;
import rungwise.quantities.TimeSpan;

/** How long an erection has lasted, as the longest that can be believed. */
public sealed interface Elapsed {

  /** Counted from the earliest credible start. */
  record Known(TimeSpan lasted) implements Elapsed {}

  /**
   * Nobody can say that it is less than 4 hours, so it is read as 4 hours or more.
   *
   * @param atLeast how long it has lasted by the statements that do say a time
   */
  record Unknown(Optional<TimeSpan> atLeast) implements Elapsed {}

  /** Whether it is an emergency: 4 hours, or not known to be less. */
  default boolean isEmergency() {
    return untilEmergency().isEmpty();
  }

  /** How long until 4 hours are reached; empty when they are, or may be. */
  default Optional<TimeSpan> untilEmergency() {
    return switch (this) {
      case Known known when known.lasted().isLessThan(DurationLimits.EMERGENCY.value()) ->
          Optional.of(
              new TimeSpan(
                  DurationLimits.EMERGENCY.value().milliseconds() - known.lasted().milliseconds()));
      case Known known -> Optional.empty();
      case Unknown unknown -> Optional.empty();
    };
  }
}
