package rungwise.quantities;

import java.util.Map;
import java.util.Optional;

/**
 * A volume of liquid, as a whole number of microlitres (0.001 mL).
 *
 * @param microlitres 0 or more
 */
public record Volume(long microlitres) implements Comparable<Volume> {

  public static final Volume ZERO = new Volume(0);

  private static final String UNIT = "mL";
  private static final int PLACES = 3;

  /** A litre: no vial, bag or syringe of this therapy comes near it. */
  private static final long MOST_MICROLITRES = 1_000_000;

  private static final String SAY_MILLILITRES = "write the volume in mL";
  private static final String NOT_UNITS = "a syringe's units are marks, not an amount";
  private static final String NOT_MASS = "that is a mass, and a volume is asked for";
  private static final AmountFormat FORMAT =
      new AmountFormat(
          "a volume in mL",
          "0.2",
          Map.of(UNIT, PLACES),
          Map.ofEntries(
              Map.entry("cc", "\"cc\" is misread as \"u\" or as zeros"),
              Map.entry("u", NOT_UNITS),
              Map.entry("iu", NOT_UNITS),
              Map.entry("unit", NOT_UNITS),
              Map.entry("units", NOT_UNITS),
              Map.entry("ul", SAY_MILLILITRES),
              Map.entry("µl", SAY_MILLILITRES),
              Map.entry("μl", SAY_MILLILITRES),
              Map.entry("mcl", SAY_MILLILITRES),
              Map.entry("l", SAY_MILLILITRES),
              Map.entry("mcg", NOT_MASS),
              Map.entry("mg", NOT_MASS)),
          new AmountFormat.Range(1, MOST_MICROLITRES));

  public Volume {
    if (microlitres < 0) {
      throw new IllegalArgumentException("bug: a volume of " + microlitres + " microlitres");
    }
  }

  public static Volume ofMicrolitres(long microlitres) {
    return new Volume(microlitres);
  }

  /** What a form names by its microlitres; nothing if that is no volume from 0 to a litre. */
  public static Optional<Volume> chosen(long microlitres) {
    return microlitres < 0 || microlitres > MOST_MICROLITRES
        ? Optional.empty()
        : Optional.of(new Volume(microlitres));
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

  /**
   * Whether a whole number of steps makes this volume.
   *
   * @throws IllegalArgumentException if the step is zero
   */
  public boolean isMultipleOf(Volume step) {
    step.requireMoreThanZero();
    return microlitres % step.microlitres == 0;
  }

  public boolean isMoreThan(Volume other) {
    return microlitres > other.microlitres;
  }

  public boolean isLessThan(Volume other) {
    return microlitres < other.microlitres;
  }

  /**
   * This volume as a multiple of another, dimensionless.
   *
   * @throws IllegalArgumentException if the other is zero
   */
  public double ratioTo(Volume other) {
    other.requireMoreThanZero();
    return (double) microlitres / other.microlitres;
  }

  /** Nothing can be divided by no volume; the answer would be no number. */
  void requireMoreThanZero() {
    if (!(microlitres > 0)) {
      throw new IllegalArgumentException("bug: a division by " + this);
    }
  }

  /** The number of millilitres, without its unit, for a form field: "0.2". */
  public String millilitresText() {
    return AmountFormat.plain(microlitres, PLACES);
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
