package rungwise.quantities;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A mass of a drug, as a whole number of picograms.
 *
 * @param picograms 0 or more
 */
public record Mass(long picograms) implements Comparable<Mass> {

  private static final String NOT_UNITS = "units are marks on a syringe, not an amount";
  private static final Map<String, String> REFUSED_UNITS =
      Map.ofEntries(
          Map.entry("µg", "the micro sign is misread as mg, write mcg"),
          Map.entry("μg", "the micro sign is misread as mg, write mcg"),
          Map.entry("ug", "\"ug\" is a code for machines, write mcg"),
          Map.entry("u", NOT_UNITS),
          Map.entry("iu", NOT_UNITS),
          Map.entry("unit", NOT_UNITS),
          Map.entry("units", NOT_UNITS),
          Map.entry("g", "write the mass in mcg or mg"),
          Map.entry("ml", "that is a volume, and a mass is asked for"));

  /** Ten grams: far above what any vial of this therapy holds. */
  private static final long MOST_PICOGRAMS = 10_000_000_000_000L;

  /** A milligram, from which on a mass is printed in milligrams. */
  static final Mass MILLIGRAM = new Mass(1_000_000_000L);

  private static final AmountFormat FORMAT =
      new AmountFormat(
          "a mass in mcg or mg",
          "2.5",
          unitWords(""),
          REFUSED_UNITS,
          new AmountFormat.Range(1, MOST_PICOGRAMS));

  public Mass {
    if (picograms < 0) {
      throw new IllegalArgumentException("bug: a mass of " + picograms + " picograms");
    }
  }

  static Map<String, Integer> unitWords(String suffix) {
    var words = new LinkedHashMap<String, Integer>();
    for (MassUnit unit : MassUnit.values()) {
      words.put(unit.word() + suffix, unit.places());
    }
    return words;
  }

  public static Mass ofPicograms(long picograms) {
    return new Mass(picograms);
  }

  /** Reads a number of micrograms, such as "2.5" or "2.5 mcg". */
  public static Reading<Mass> parseMicrograms(String text) {
    return FORMAT.readIn(MassUnit.MICROGRAM.word(), text).map(Mass::new);
  }

  /** Reads a number of milligrams, such as "0.5" or "0.5 mg". */
  public static Reading<Mass> parseMilligrams(String text) {
    return FORMAT.readIn(MassUnit.MILLIGRAM.word(), text).map(Mass::new);
  }

  /** Reads a mass that must carry its unit, such as "2.5 mcg". */
  public static Reading<Mass> parse(String text) {
    return FORMAT.read(text).map(Mass::new);
  }

  public Mass plus(Mass other) {
    return new Mass(Math.addExact(picograms, other.picograms));
  }

  public boolean isMoreThan(Mass other) {
    return picograms > other.picograms;
  }

  /**
   * This mass as a multiple of another, dimensionless.
   *
   * @throws IllegalArgumentException if the other is zero
   */
  public double ratioTo(Mass other) {
    if (!(other.picograms > 0)) {
      throw new IllegalArgumentException("bug: a division by " + other);
    }
    return (double) picograms / other.picograms;
  }

  /**
   * This rounded to so many significant digits, halves upwards: to be read, never to be reckoned
   * with.
   *
   * @param digits 1 or more
   */
  public Mass toSignificant(int digits) {
    if (!(digits > 0)) {
      throw new IllegalArgumentException("bug: a mass in " + digits + " digits");
    }
    var context = new MathContext(digits, RoundingMode.HALF_UP);
    return new Mass(new BigDecimal(picograms).round(context).longValueExact());
  }

  /** "2.5 mcg" or "0.0025 mg". */
  public String in(MassUnit unit) {
    return FORMAT.print(picograms, unit.word());
  }

  /** The number in a unit, without the unit, as it may be typed into a form: "2.5". */
  public String numberText(MassUnit unit) {
    return AmountFormat.plain(picograms, unit.places());
  }

  @Override
  public int compareTo(Mass other) {
    return Long.compare(picograms, other.picograms);
  }

  /** In milligrams from 1 mg on, else in micrograms. */
  @Override
  public String toString() {
    return in(picograms >= MILLIGRAM.picograms ? MassUnit.MILLIGRAM : MassUnit.MICROGRAM);
  }
}
