package rungwise.dosing.known;

import java.math.BigDecimal;
import java.math.RoundingMode;
import rungwise.quantities.Mass;

/**
 * How much of a salt's mass is the drug itself.
 *
 * @param base molar mass of the free base in g/mol
 * @param salt molar mass of the salt in g/mol, not less than the base
 */
public record SaltBasis(BigDecimal base, BigDecimal salt) {

  public SaltBasis {
    base = base.stripTrailingZeros();
    salt = salt.stripTrailingZeros();
    if (base.signum() <= 0 || salt.compareTo(base) < 0) {
      throw new IllegalArgumentException("bug: molar masses " + base + " and " + salt);
    }
  }

  /** The mass of base in a mass of salt, rounded down to a picogram. */
  public Mass baseIn(Mass ofSalt) {
    return Mass.ofPicograms(
        BigDecimal.valueOf(ofSalt.picograms())
            .multiply(base)
            .divide(salt, 0, RoundingMode.DOWN)
            .longValueExact());
  }
}
