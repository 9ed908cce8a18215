package rungwise.checks.topics;

import java.math.BigDecimal;
import java.math.MathContext;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.quantities.Volume;

/** Turns the product's amounts into the plain numbers of the rows, and back. Nothing is rounded. */
final class Amounts {

  private static final int MICROLITRES_TO_MILLILITRES = 3;
  private static final int NANOLITRES_TO_MILLILITRES = 6;
  private static final int PICOGRAMS_TO_MICROGRAMS = 6;
  private static final int PICOGRAMS_TO_MILLIGRAMS = 9;

  private Amounts() {}

  static BigDecimal millilitres(Volume volume) {
    return BigDecimal.valueOf(volume.microlitres()).movePointLeft(MICROLITRES_TO_MILLILITRES);
  }

  static BigDecimal millilitresOfNanolitres(long nanolitres) {
    return BigDecimal.valueOf(nanolitres).movePointLeft(NANOLITRES_TO_MILLILITRES);
  }

  static BigDecimal millilitres(ExactVolume volume) {
    return BigDecimal.valueOf(volume.picograms())
        .divide(BigDecimal.valueOf(volume.picogramsPerMicrolitre()), MathContext.DECIMAL128)
        .movePointLeft(MICROLITRES_TO_MILLILITRES);
  }

  static BigDecimal in(MassUnit unit, Mass mass) {
    int places =
        switch (unit) {
          case MICROGRAM -> PICOGRAMS_TO_MICROGRAMS;
          case MILLIGRAM -> PICOGRAMS_TO_MILLIGRAMS;
        };
    return BigDecimal.valueOf(mass.picograms()).movePointLeft(places);
  }

  /** A number of steps, such as 6.25 units of 0.01 mL, which need not be a whole volume. */
  static ExactVolume steps(BigDecimal count, Volume step) {
    BigDecimal microlitres =
        count.multiply(BigDecimal.valueOf(step.microlitres())).stripTrailingZeros();
    int places = Math.max(0, microlitres.scale());
    return new ExactVolume(
        microlitres.movePointRight(places).longValueExact(),
        BigDecimal.ONE.movePointRight(places).longValueExact());
  }
}
