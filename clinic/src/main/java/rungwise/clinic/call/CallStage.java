package rungwise.clinic.call;

import java.time.Instant;
import java.util.Optional;
import rungwise.dosing.known.DurationLimits;
import rungwise.quantities.TimeSpan;

/** How far an erection has come that is still firm, by which it is told what to do. */
public enum CallStage {
  /** 2 hours have not passed. */
  EARLY,

  /** 2 hours have passed, and 4 have not. */
  LONG,

  /** 4 hours have passed, or nobody can say that they have not. */
  EMERGENCY;

  /**
   * The stage at an instant. What began later than now cannot be counted.
   *
   * @param start the earliest that is credible; empty if nobody knows
   * @param now empty if the clock is not believed
   */
  public static CallStage of(Optional<Instant> start, Optional<Instant> now) {
    return now.flatMap(
            known -> start.filter(at -> !at.isAfter(known)).map(at -> TimeSpan.between(at, known)))
        .map(CallStage::of)
        .orElse(EMERGENCY);
  }

  private static CallStage of(TimeSpan elapsed) {
    if (!elapsed.isLessThan(DurationLimits.EMERGENCY.value())) {
      return EMERGENCY;
    }
    return elapsed.isLessThan(DurationLimits.CLOSES_VOLUME.value()) ? EARLY : LONG;
  }
}
