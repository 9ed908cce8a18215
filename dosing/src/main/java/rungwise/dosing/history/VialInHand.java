package rungwise.dosing.history;

import rungwise.dosing.known.Preparation;
import rungwise.dosing.supply.VialEnd;

/**
 * The vial that the next dose would be drawn from.
 *
 * @param stock which vial it is, and how fresh on that day
 * @param label what its label says it holds
 * @param end until when it may be used, and what ends it
 */
public record VialInHand(Stock stock, Label label, VialEnd end) {

  /**
   * The words of a label.
   *
   * @param composition such as "alprostadil 20 mcg per mL"
   */
  public record Label(String composition) {

    /** Whether it says exactly what a preparation holds. */
    public boolean isOf(Preparation preparation) {
      return composition.equals(preparation.composition());
    }
  }
}
