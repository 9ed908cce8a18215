package rungwise.dosing.history;

import rungwise.dosing.supply.Freshness;

/**
 * From which vial an injection was drawn.
 *
 * @param vial its identity in the record; empty if nobody wrote it down
 * @param freshness how fresh it was on that day
 */
public record Stock(String vial, Freshness freshness) {

  public static final Stock NOT_RECORDED = new Stock("", Freshness.NOT_KNOWN);

  public Stock {
    if (vial.isBlank() && freshness != Freshness.NOT_KNOWN) {
      throw new IllegalArgumentException("bug: without a vial nothing is known of its age");
    }
  }

  /** Whether it is on record which vial it was, and with it what its label said. */
  public boolean isLabelKnown() {
    return !vial.isBlank();
  }

  /** Whether two doses were drawn from the same vial; what nobody wrote down is never the same. */
  public boolean isSameAs(Stock other) {
    return isLabelKnown() && vial.equals(other.vial);
  }
}
