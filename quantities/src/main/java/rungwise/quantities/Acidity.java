package rungwise.quantities;

import java.util.Map;

/**
 * The pH of blood, as a whole number of thousandths: the lower, the more acid.
 *
 * @param thousandths 0 to 14,000
 */
public record Acidity(long thousandths) implements Comparable<Acidity> {

  private static final String NO_UNIT = "";
  private static final int PLACES = 3;
  private static final long MOST = 14_000;

  private static final AmountFormat FORMAT =
      new AmountFormat(
          "a pH", "7.25", Map.of(NO_UNIT, PLACES), Map.of(), new AmountFormat.Range(0, MOST));

  public Acidity {
    if (thousandths < 0 || thousandths > MOST) {
      throw new IllegalArgumentException("bug: a pH of " + thousandths + " thousandths");
    }
  }

  /** Reads a pH, such as "7.25"; a laboratory prints zeros at the end, which change nothing. */
  public static Reading<Acidity> parse(String text) {
    return FORMAT.readIn(NO_UNIT, text).map(Acidity::new);
  }

  public boolean isLessThan(Acidity other) {
    return thousandths < other.thousandths;
  }

  public boolean isMoreThan(Acidity other) {
    return thousandths > other.thousandths;
  }

  @Override
  public int compareTo(Acidity other) {
    return Long.compare(thousandths, other.thousandths);
  }

  /** "7.25". */
  @Override
  public String toString() {
    return FORMAT.print(thousandths, NO_UNIT);
  }
}
