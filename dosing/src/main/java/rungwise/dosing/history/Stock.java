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
}
