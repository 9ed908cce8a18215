package rungwise.dosing.history;

import rungwise.dosing.known.Preparation;
import rungwise.dosing.supply.VialCare;
import rungwise.dosing.supply.VialEnd;

/**
 * The vial that the next dose would be drawn from.
 *
 * @param stock which vial it is, and how fresh on that day
 * @param label what its label says it holds
 * @param end until when it may be used, and what ends it
 * @param care whether it may be drawn from, by how it was kept
 */
public record VialInHand(Stock stock, Label label, VialEnd end, VialCare care) {

  /** A vial of which nothing else is written. */
  public VialInHand(Stock stock, Label label, VialEnd end) {
    this(stock, label, end, VialCare.AS_LABELLED);
  }

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
