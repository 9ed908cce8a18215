package rungwise.quantities;

import java.util.Map;

/**
 * A volume of liquid, as a whole number of microlitres (0.001 mL).
 *
 * @param microlitres 0 or more
 */
public record Volume(long microlitres) implements Comparable<Volume> {

  public static final Volume ZERO = new Volume(0);

  private static final String UNIT = "mL";
  private static final String SAY_MILLILITRES = "write the volume in mL, such as 0.2 mL";
  private static final String NOT_UNITS =
      "a syringe's units are marks, not an amount: write mL, or give the mark by itself";
  private static final AmountFormat FORMAT =
      new AmountFormat(
          "a volume in mL",
          "0.2",
          Map.of(UNIT, 3),
          Map.ofEntries(
              Map.entry("cc", "\"cc\" is misread as \"u\" or as zeros: write mL"),
              Map.entry("u", NOT_UNITS),
              Map.entry("iu", NOT_UNITS),
              Map.entry("unit", NOT_UNITS),
              Map.entry("units", NOT_UNITS),
              Map.entry("ul", SAY_MILLILITRES),
              Map.entry("µl", SAY_MILLILITRES),
              Map.entry("μl", SAY_MILLILITRES),
              Map.entry("mcl", SAY_MILLILITRES),
              Map.entry("l", SAY_MILLILITRES)));

  public Volume {
    if (microlitres < 0) {
      throw new IllegalArgumentException("bug: a volume of " + microlitres + " microlitres");
    }
  }

  public static Volume ofMicrolitres(long microlitres) {
    return new Volume(microlitres);
  }

  /** Reads a number that a program or a person wrote in millilitres, such as "0.2". */
  public static Reading<Volume> parseMillilitres(String text) {
    return FORMAT.readIn(UNIT, text).map(Volume::new);
  }

  /** Reads a volume that must carry its unit, such as "0.2 mL". */
  public static Reading<Volume> parse(String text) {
    return FORMAT.read(text).map(Volume::new);
  }

  public Volume plus(Volume other) {
    return new Volume(Math.addExact(microlitres, other.microlitres));
  }

  /**
   * This volume less another.
   *
   * @throws IllegalArgumentException if the other is the larger
   */
  public Volume minus(Volume other) {
    return new Volume(microlitres - other.microlitres);
  }

  public Volume times(long count) {
    return new Volume(Math.multiplyExact(microlitres, count));
  }

  public boolean isMultipleOf(Volume step) {
    return microlitres % step.microlitres == 0;
  }

  public boolean isMoreThan(Volume other) {
    return microlitres > other.microlitres;
  }

  public boolean isLessThan(Volume other) {
    return microlitres < other.microlitres;
  }

  /** This volume as a multiple of another, dimensionless. */
  public double ratioTo(Volume other) {
    return (double) microlitres / other.microlitres;
  }

  /** The number of millilitres, without its unit, for a form field: "0.2". */
  public String millilitresText() {
    return AmountFormat.plain(microlitres, 3);
  }

  @Override
  public int compareTo(Volume other) {
    return Long.compare(microlitres, other.microlitres);
  }

  /** "0.2 mL". */
  @Override
  public String toString() {
    return FORMAT.print(microlitres, UNIT);
  }
}
