package rungwise.clinic.standing;

import rungwise.clinic.keeping.VialLife;
import rungwise.dosing.supply.VialDates;
import rungwise.dosing.supply.VialEnd;

/**
 * What is known of the use of one vial.
 *
 * @param dates as its label says, and open at the latest when a dose was drawn from it
 * @param end until when it may be used, and what ends it
 * @param life what befell it
 */
public record VialUse(VialDates dates, VialEnd end, VialLife life) {}
