package rungwise.quantities;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A mass in a volume, as a whole number of picograms per microlitre (the same number of nanograms
 * per millilitre), so that the mass in any whole number of microlitres is exact.
 *
 * @param picogramsPerMicrolitre 1 or more
 */
public record Concentration(long picogramsPerMicrolitre) implements Comparable<Concentration> {

  private static final String PER_MILLILITRE = "/mL";

  /** Between a picogram per microlitre and a unit per millilitre lie three powers fewer. */
  private static final int PLACES_LESS_THAN_MASS = 3;

  /** A gram in a millilitre, which no solution for injection reaches. */
  private static final long MOST_PICOGRAMS_PER_MICROLITRE = 1_000_000_000;

  /** A milligram per millilitre, from which on a strength is printed in milligrams. */
  private static final long MILLIGRAM_PER_MILLILITRE = 1_000_000;

  private static final AmountFormat FORMAT =
      new AmountFormat(
          "a strength in mcg/mL or mg/mL",
          "20",
          unitWords(),
          refusedUnits(),
          new AmountFormat.Range(1, MOST_PICOGRAMS_PER_MICROLITRE));

  public Concentration {
    if (!(picogramsPerMicrolitre > 0)) {
      throw new IllegalArgumentException(
          "bug: a concentration of " + picogramsPerMicrolitre + " picograms per microlitre");
    }
  }

  private static Map<String, Integer> unitWords() {
    var words = new LinkedHashMap<String, Integer>();
    Mass.unitWords(PER_MILLILITRE)
        .forEach((word, places) -> words.put(word, places - PLACES_LESS_THAN_MASS));
    return words;
  }

  private static Map<String, String> refusedUnits() {
    var words = new LinkedHashMap<String, String>();
    for (MassUnit unit : MassUnit.values()) {
      words.put(unit.word(), "the volume is missing, write " + unit.word() + "/mL");
    }
    words.put("ug/ml", "\"ug\" is a code for machines, write mcg/mL");
    words.put("µg/ml", "the micro sign is misread as mg, write mcg/mL");
    words.put("μg/ml", "the micro sign is misread as mg, write mcg/mL");
    words.put("mcg/cc", "\"cc\" is misread as \"u\" or as zeros, write mcg/mL");
    words.put("mg/cc", "\"cc\" is misread as \"u\" or as zeros, write mg/mL");
    return words;
  }

  /**
   * The strength that a whole mass in a volume makes, such as 10 mcg in 0.5 mL.
   *
   * @throws IllegalArgumentException if it is not a whole number of picograms per microlitre
   */
  public static Concentration of(Mass mass, Volume in) {
    if (in.microlitres() == 0 || mass.picograms() % in.microlitres() != 0) {
      throw new IllegalArgumentException("bug: " + mass + " in " + in + " is not exact");
    }
    return new Concentration(mass.picograms() / in.microlitres());
  }

  /** Reads a strength that must carry its unit, such as "20 mcg/mL". */
  public static Reading<Concentration> parse(String text) {
    return FORMAT.read(text).map(Concentration::new);
  }

  /** Reads a number per millilitre in a unit that the form names. */
  public static Reading<Concentration> parsePerMillilitre(MassUnit unit, String text) {
    return FORMAT.readIn(unit.word() + PER_MILLILITRE, text).map(Concentration::new);
  }

  /** The exact mass in a volume. */
  public Mass in(Volume volume) {
    return new Mass(Math.multiplyExact(picogramsPerMicrolitre, volume.microlitres()));
  }

  /** The exact volume that holds a mass; it becomes a volume only by rounding down. */
  public ExactVolume volumeOf(Mass mass) {
    return new ExactVolume(mass.picograms(), picogramsPerMicrolitre);
  }

  /** This strength as a multiple of another, dimensionless. */
  public double ratioTo(Concentration other) {
    return (double) picogramsPerMicrolitre / other.picogramsPerMicrolitre;
  }

  /** "20 mcg/mL". */
  public String in(MassUnit unit) {
    return FORMAT.print(picogramsPerMicrolitre, unit.word() + PER_MILLILITRE);
  }

  /** The number per millilitre in a unit, without the unit, for a reader: "20" or "1,200". */
  public String numberIn(MassUnit unit) {
    return AmountFormat.grouped(numberText(unit));
  }

  /** The number per millilitre in a unit, as it may be typed into a form: "20" or "1200". */
  public String numberText(MassUnit unit) {
    return AmountFormat.plain(picogramsPerMicrolitre, unit.places() - PLACES_LESS_THAN_MASS);
  }

  @Override
  public int compareTo(Concentration other) {
    return Long.compare(picogramsPerMicrolitre, other.picogramsPerMicrolitre);
  }

  /** In milligrams per millilitre from 1 mg/mL on, else in micrograms per millilitre. */
  @Override
  public String toString() {
    boolean large = picogramsPerMicrolitre >= MILLIGRAM_PER_MILLILITRE;
    return in(large ? MassUnit.MILLIGRAM : MassUnit.MICROGRAM);
  }
}
