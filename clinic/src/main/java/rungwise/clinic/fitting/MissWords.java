package rungwise.clinic.fitting;

import rungwise.dosing.predictive.Predicted;

/** How far what was reported lies outside of what was foreseen, in one sentence. */
public final class MissWords {

  private MissWords() {}

  /** "7 of 83 ranges miss what was reported; by chance alone about 8 do." */
  public static String of(Predicted.Misses misses) {
    return misses.missed()
        + " of "
        + misses.ranges()
        + " ranges miss what was reported; by chance alone about "
        + Math.round(misses.byChance())
        + " do.";
  }
}
