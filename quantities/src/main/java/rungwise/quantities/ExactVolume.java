package rungwise.quantities;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * The volume that holds a wanted mass, kept as the fraction it is. 1.25 mcg of 20 mcg/mL is 62.5
 * microlitres, which no {@link Volume} can hold: it becomes one only by rounding down to a step.
 *
 * @param picograms the wanted mass, 0 or more
 * @param picogramsPerMicrolitre the strength, 1 or more
 */
public record ExactVolume(long picograms, long picogramsPerMicrolitre)
    implements Comparable<ExactVolume> {

  private static final MathContext SHOWN = new MathContext(6);
  private static final BigDecimal MICROLITRES_IN_A_MILLILITRE = BigDecimal.valueOf(1000);

  public ExactVolume {
    if (picograms < 0 || picogramsPerMicrolitre < 1) {
      throw new IllegalArgumentException(
          "bug: " + picograms + " picograms at " + picogramsPerMicrolitre + " per microlitre");
    }
    long divisor = greatestDivisor(picograms, picogramsPerMicrolitre);
    picograms /= divisor;
    picogramsPerMicrolitre /= divisor;
  }

  private static long greatestDivisor(long one, long other) {
    long greater = one;
    long rest = other;
    while (rest != 0) {
      long left = greater % rest;
      greater = rest;
      rest = left;
    }
    return greater;
  }

  /** A volume that is already whole. */
  public static ExactVolume of(Volume volume) {
    return new ExactVolume(volume.microlitres(), 1);
  }

  /**
   * The largest multiple of the step that is not more than this.
   *
   * @throws IllegalArgumentException if the step is zero
   */
  public Volume roundDownTo(Volume step) {
    step.requireMoreThanZero();
    long wholeMicrolitres = picograms / picogramsPerMicrolitre;
    return step.times(wholeMicrolitres / step.microlitres());
  }

  /** Whether this is that volume. A fraction in lowest terms is whole if it is over one. */
  public boolean isExactly(Volume volume) {
    return picogramsPerMicrolitre == 1 && picograms == volume.microlitres();
  }

  /**
   * This volume as a multiple of another, dimensionless.
   *
   * @throws IllegalArgumentException if the other is zero
   */
  public double ratioTo(Volume other) {
    other.requireMoreThanZero();
    return (double) picograms / ((double) picogramsPerMicrolitre * other.microlitres());
  }

  @Override
  public int compareTo(ExactVolume other) {
    // Each product in 128 bits: the high halves first, then the low ones as if without a sign.
    int high =
        Long.compare(
            Math.multiplyHigh(picograms, other.picogramsPerMicrolitre),
            Math.multiplyHigh(other.picograms, picogramsPerMicrolitre));
    return high == 0
        ? Long.compareUnsigned(
            picograms * other.picogramsPerMicrolitre, other.picograms * picogramsPerMicrolitre)
        : high;
  }

  /** "0.0625 mL", or "about 0.333333 mL" where the decimals do not end. */
  @Override
  public String toString() {
    BigDecimal divisor =
        BigDecimal.valueOf(picogramsPerMicrolitre).multiply(MICROLITRES_IN_A_MILLILITRE);
    BigDecimal shown = BigDecimal.valueOf(picograms).divide(divisor, SHOWN);
    boolean exact = shown.multiply(divisor).compareTo(BigDecimal.valueOf(picograms)) == 0;
    String digits = shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
    return (exact ? "" : "about ") + digits + " mL";
  }
}
