package rungwise.dosing.strength;

import java.math.BigDecimal;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/**
 * Between which percent of its label an assay of a vial must lie.
 *
 * @param least percent
 * @param most percent, not less
 */
public record StrengthLimits(BigDecimal least, BigDecimal most) {

  /** Where no monograph says. */
  public static final Sourced<StrengthLimits> GENERAL =
      new Sourced<>(
          new StrengthLimits(BigDecimal.valueOf(90), BigDecimal.valueOf(110)),
          Source.secondary(Citation.USP_797, "within 10 percent where no monograph says"));

  /** Of alprostadil injection. */
  public static final Sourced<StrengthLimits> ALPROSTADIL =
      new Sourced<>(
          new StrengthLimits(BigDecimal.valueOf(90), BigDecimal.valueOf(115)),
          Source.read(Citation.USP_ALPROSTADIL, "90 to 115 percent"));

  private static final int PERCENT = 2;

  /** Whether an assay lies within them; both limits are still within. */
  public boolean hold(BigDecimal assay, BigDecimal label) {
    BigDecimal hundredfold = assay.movePointRight(PERCENT);
    return hundredfold.compareTo(label.multiply(least)) >= 0
        && hundredfold.compareTo(label.multiply(most)) <= 0;
  }
}
