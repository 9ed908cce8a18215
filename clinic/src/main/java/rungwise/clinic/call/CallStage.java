package rungwise.clinic.call;

import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.urgent.Elapsed;

/** How far an erection has come that is still firm, by which it is told what to do. */
public enum CallStage {
  /** 2 hours have not passed. */
  EARLY,

  /** 2 hours have passed, and 4 have not. */
  LONG,

  /** 4 hours have passed, or nobody can say that they have not. */
  EMERGENCY;

  /** The stage of what has lasted so long, as far as anybody can say. */
  public static CallStage of(Elapsed elapsed) {
    return switch (elapsed) {
      case Elapsed.Known known when !known.isEmergency() ->
          known.lasted().isLessThan(DurationLimits.CLOSES_VOLUME.value()) ? EARLY : LONG;
      case Elapsed.Known known -> EMERGENCY;
      case Elapsed.Unknown unknown -> EMERGENCY;
    };
  }
}
