package rungwise.dosing.predictive;

import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;

/** A duration from which on a rule speaks. */
enum Limit {
  HOUR(0, DurationLimits.NO_HIGHER_DOSE),
  TWO_HOURS(1, DurationLimits.CLOSES_VOLUME),
  EMERGENCY(2, DurationLimits.EMERGENCY);

  private final int place;
  private final double minutes;

  Limit(int place, Sourced<TimeSpan> limit) {
    this.place = place;
    minutes = limit.value().ratioTo(TimeSpan.ofMinutes(1));
  }

  /** Its number, the shortest first. */
  int place() {
    return place;
  }

  double minutes() {
    return minutes;
  }

  /** Whether it was surely reached. */
  boolean isReached(Lasted lasted) {
    return switch (lasted) {
      case Lasted.Exactly(double exact) -> exact >= minutes;
      case Lasted.AtLeast(double least) -> least >= minutes;
      case Lasted.Between(double from, double before) -> from >= minutes;
      case Lasted.NotRecorded none -> false;
    };
  }

  /** Whether it was, or may have been, reached. */
  boolean mayBeReached(Lasted lasted) {
    return switch (lasted) {
      case Lasted.Exactly(double exact) -> exact >= minutes;
      case Lasted.AtLeast atLeast -> true;
      case Lasted.Between(double from, double before) -> before > minutes;
      case Lasted.NotRecorded none -> true;
    };
  }
}
