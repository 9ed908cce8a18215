package rungwise.quantities;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A mass of a drug, as a whole number of picograms.
 *
 * @param picograms 0 or more
 */
public record Mass(long picograms) implements Comparable<Mass> {

  static final Map<String, String> REFUSED_UNITS =
      Map.ofEntries(
          Map.entry("µg", "the micro sign is misread as mg: write mcg"),
          Map.entry("μg", "the micro sign is misread as mg: write mcg"),
          Map.entry("ug", "write mcg; \"ug\" is a code for machines"),
          Map.entry("u", "\"U\" is misread as 0 or 4, and units are marks: write mcg or mg"),
          Map.entry("iu", "\"IU\" is misread as IV or 10: write mcg or mg"),
          Map.entry("unit", "units are marks on a syringe, not an amount: write mcg or mg"),
          Map.entry("units", "units are marks on a syringe, not an amount: write mcg or mg"),
          Map.entry("g", "write the mass in mcg or mg"),
          Map.entry("ml", "that is a volume: write the mass in mcg or mg"));

  private static final AmountFormat FORMAT =
      new AmountFormat("a mass in mcg or mg", "2.5", unitWords(""), REFUSED_UNITS);

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

  /** This mass as a multiple of another, dimensionless. */
  public double ratioTo(Mass other) {
    return (double) picograms / other.picograms;
  }

  /** "2.5 mcg" or "0.0025 mg". */
  public String in(MassUnit unit) {
    return FORMAT.print(picograms, unit.word());
  }

  @Override
  public int compareTo(Mass other) {
    return Long.compare(picograms, other.picograms);
  }

  /** In milligrams from 1 mg on, else in micrograms. */
  @Override
  public String toString() {
    return in(picograms >= 1_000_000_000L ? MassUnit.MILLIGRAM : MassUnit.MICROGRAM);
  }
}
