package rungwise.dosing.response;

import rungwise.dosing.history.Grade;

/**
 * One injection as the model reads it.
 *
 * @param logDose the logarithm of what was given as a multiple of the reference amount
 * @param lasted left out by the model below grade 3
 */
public record Trial(double logDose, Grade grade, Lasted lasted) {

  public Trial {
    boolean isSound =
        Double.isFinite(logDose) && !(grade.isUseful() && lasted.equals(new Lasted.Exactly(0)));
    if (!isSound) {
      throw new IllegalArgumentException("bug: a trial at " + logDose + ", " + lasted);
    }
  }
}
