package rungwise.dosing.response;

import rungwise.quantities.Volume;

/**
 * What was injected, or would be.
 *
 * @param potency what is left of the labelled strength, more than 0 and at most 1.2
 * @param strength the strength of the preparation relative to the reference preparation
 */
public record Given(Volume volume, double potency, double strength) {

  /** The reference amount: 0.1 mL of the reference preparation, the 10-unit mark. */
  public static final Volume REFERENCE = Volume.ofMicrolitres(100);

  private static final double MOST_POTENCY = 1.2;

  public Given {
    boolean isSound =
        volume.isMoreThan(Volume.ZERO) && potency > 0 && potency <= MOST_POTENCY && strength > 0;
    if (!isSound) {
      throw new IllegalArgumentException(
          "bug: " + volume + " of potency " + potency + " and strength " + strength);
    }
  }

  /** The logarithm of the amount as a multiple of the reference amount. */
  public double logDose() {
    return Math.log(volume.ratioTo(REFERENCE) * potency * strength);
  }
}
