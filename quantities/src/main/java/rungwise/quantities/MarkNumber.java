package rungwise.quantities;

import java.util.Map;

/**
 * The number of a line on a syringe's scale, in tenths, so that half-unit lines are exact. It is
 * not an amount of anything until the syringe says what one unit holds.
 *
 * @param tenths more than 0
 */
public record MarkNumber(long tenths) {

  private static final int TENTHS_IN_ONE = 10;

  /** Far beyond the last line of any syringe. */
  private static final long MOST_TENTHS = 5_000;

  private static final String NO_UNIT = "";
  private static final String NUMBER_ONLY =
      "write only the number of the line to which the stopper is drawn";
  private static final String NOT_A_VOLUME = "that is a volume, and a line is asked for";
  private static final AmountFormat FORMAT =
      new AmountFormat(
          "the number of a syringe line",
          "20",
          Map.of(NO_UNIT, 1),
          Map.of(
              "u", NUMBER_ONLY,
              "iu", NUMBER_ONLY,
              "unit", NUMBER_ONLY,
              "units", NUMBER_ONLY,
              "ml", NOT_A_VOLUME,
              "cc", NOT_A_VOLUME),
          new AmountFormat.Range(1, MOST_TENTHS));

  public MarkNumber {
    if (!(tenths > 0)) {
      throw new IllegalArgumentException("bug: a mark of " + tenths + " tenths");
    }
  }

  /** Reads the number of a line, such as "20" or "12.5". */
  public static Reading<MarkNumber> parse(String text) {
    return FORMAT.readIn(NO_UNIT, text).map(MarkNumber::new);
  }

  /**
   * The volume up to this line.
   *
   * @param perUnit what lies between two whole numbers; a multiple of 10 microlitres, or of 1 where
   *     the number is whole
   * @throws IllegalArgumentException if that is not a whole number of microlitres
   */
  public Volume on(Volume perUnit) {
    Volume tenfold = perUnit.times(tenths);
    if (tenfold.microlitres() % TENTHS_IN_ONE != 0) {
      throw new IllegalArgumentException("bug: the " + this + " lies between two microlitres");
    }
    return Volume.ofMicrolitres(tenfold.microlitres() / TENTHS_IN_ONE);
  }

  /** "20-unit mark". */
  @Override
  public String toString() {
    return number() + "-unit mark";
  }

  /** "20", without a word. */
  public String number() {
    return AmountFormat.plain(tenths, 1);
  }
}
