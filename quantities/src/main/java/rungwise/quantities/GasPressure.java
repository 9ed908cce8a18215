package rungwise.quantities;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Map;

/**
 * The pressure of a gas in blood, as a whole number of picopascals, in which a tenth of a mmHg and
 * a hundredth of a kPa are both whole. A mmHg is 133.322387415 pascals by definition (13,595.1
 * kg/m3 of mercury, 9.80665 m/s2).
 *
 * @param picopascals 0 or more
 */
public record GasPressure(long picopascals) implements Comparable<GasPressure> {

  private static final String MMHG = "mmHg";
  private static final String KPA = "kPa";
  private static final long TENTH_OF_A_MMHG = 13_332_238_741_500L;
  private static final long HUNDREDTH_OF_A_KPA = 10_000_000_000_000L;
  private static final int MMHG_PLACES = 1;
  private static final int KPA_PLACES = 2;

  /** Some two atmospheres: no blood comes near it. */
  private static final long MOST_TENTHS_OF_MMHG = 15_000;

  private static final long MOST_HUNDREDTHS_OF_KPA = 20_000;

  private static final AmountFormat IN_MMHG =
      new AmountFormat(
          "a pressure in mmHg or kPa",
          "40",
          Map.of(MMHG, MMHG_PLACES),
          Map.of("pa", "write it in mmHg or kPa", "mbar", "write it in mmHg or kPa"),
          new AmountFormat.Range(0, MOST_TENTHS_OF_MMHG));

  private static final AmountFormat IN_KPA =
      new AmountFormat(
          "a pressure in mmHg or kPa",
          "5.3",
          Map.of(KPA, KPA_PLACES),
          Map.of(),
          new AmountFormat.Range(0, MOST_HUNDREDTHS_OF_KPA));

  public GasPressure {
    if (picopascals < 0) {
      throw new IllegalArgumentException("bug: a pressure of " + picopascals + " picopascals");
    }
  }

  public static GasPressure ofMmhg(long mmhg) {
    return ofTenths(Math.multiplyExact(mmhg, 10L));
  }

  /** Reads a pressure that must carry its unit, such as "40 mmHg" or "5.3 kPa". */
  public static Reading<GasPressure> parse(String text) {
    boolean isInKpa = text.strip().toLowerCase(Locale.ROOT).endsWith("kpa");
    return isInKpa
        ? IN_KPA.read(text).map(GasPressure::ofHundredthsOfKpa)
        : IN_MMHG.read(text).map(GasPressure::ofTenths);
  }

  private static GasPressure ofTenths(long tenthsOfMmhg) {
    return new GasPressure(Math.multiplyExact(tenthsOfMmhg, TENTH_OF_A_MMHG));
  }

  private static GasPressure ofHundredthsOfKpa(long hundredths) {
    return new GasPressure(Math.multiplyExact(hundredths, HUNDREDTH_OF_A_KPA));
  }

  public boolean isMoreThan(GasPressure other) {
    return picopascals > other.picopascals;
  }

  public boolean isLessThan(GasPressure other) {
    return picopascals < other.picopascals;
  }

  @Override
  public int compareTo(GasPressure other) {
    return Long.compare(picopascals, other.picopascals);
  }

  /**
   * "40 mmHg", or "about 39.8 mmHg" where it is no whole tenth: to be read, never reckoned with.
   */
  @Override
  public String toString() {
    long tenths =
        BigDecimal.valueOf(picopascals)
            .divide(BigDecimal.valueOf(TENTH_OF_A_MMHG), 0, RoundingMode.HALF_EVEN)
            .longValueExact();
    boolean isExact = tenths * TENTH_OF_A_MMHG == picopascals;
    return (isExact ? "" : "about ") + IN_MMHG.print(tenths, MMHG);
  }
}
