package rungwise.dosing.supply;

import rungwise.quantities.Volume;

/**
 * What one injection takes from a vial.
 *
 * @param dose more than 0
 * @param deadSpace what stays in the syringe and needle
 * @param purge what is pushed out with the air
 */
public record Draw(Volume dose, Volume deadSpace, Volume purge) {

  public Draw {
    if (!dose.isMoreThan(Volume.ZERO)) {
      throw new IllegalArgumentException("bug: a draw without a dose");
    }
  }

  /** All of it. */
  public Volume whole() {
    return dose.plus(deadSpace).plus(purge);
  }

  /**
   * How many whole injections a vial still gives.
   *
   * @param left what is in it; of a full vial, what its label says: the overfill is never counted
   * @param holdUp what cannot be drawn out of it
   */
  public long dosesIn(Volume left, Volume holdUp) {
    return left.isMoreThan(holdUp) ? left.minus(holdUp).microlitres() / whole().microlitres() : 0;
  }

  /** The least that a vial for so many injections holds. */
  public Volume vialFor(long doses, Volume holdUp) {
    return whole().times(doses).plus(holdUp);
  }
}
