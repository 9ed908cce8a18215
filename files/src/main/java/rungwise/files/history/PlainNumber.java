package rungwise.files.history;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;

/**
 * Numbers as a cell holds them: digits with at most one point, as the texts of people; no exponent,
 * no sign. The digits may be those of a longer text.
 */
final class PlainNumber {

  private static final int MOST_BEFORE_THE_POINT = 9;
  private static final int MOST_AFTER_THE_POINT = 20;
  private static final int TEN = 10;

  /**
   * A whole number of so many digits and a power of ten below it are exact, so that their quotient
   * is the double next to the decimal number (Clinger, PLDI 1990).
   */
  private static final int MOST_EXACT_DIGITS = 15;

  private static final double[] POWERS = {
    1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
  };

  private PlainNumber() {}

  /** The double next to the number that stands there; NaN where there is none. */
  static double decimal(byte[] text, int from, int to) {
    int point = endOfDigits(text, from, to);
    if (point == from || point - from > MOST_BEFORE_THE_POINT) {
      return Double.NaN;
    }
    if (point == to) {
      return digits(0, text, from, to);
    }
    int after = to - point - 1;
    boolean isNumber =
        text[point] == '.'
            && after > 0
            && after <= MOST_AFTER_THE_POINT
            && endOfDigits(text, point + 1, to) == to;
    if (!isNumber) {
      return Double.NaN;
    }
    return to - from - 1 <= MOST_EXACT_DIGITS
        ? digits(digits(0, text, from, point), text, point + 1, to) / POWERS[after]
        : new BigDecimal(new String(text, from, to - from, StandardCharsets.US_ASCII))
            .doubleValue();
  }

  /** The whole number that stands there; -1 where there is none. */
  static int whole(byte[] text, int from, int to) {
    boolean isWhole =
        to > from && to - from <= MOST_BEFORE_THE_POINT && endOfDigits(text, from, to) == to;
    return isWhole ? (int) digits(0, text, from, to) : -1;
  }

  private static int endOfDigits(byte[] text, int from, int to) {
    int at = from;
    while (at < to && text[at] >= '0' && text[at] <= '9') {
      at++;
    }
    return at;
  }

  private static long digits(long before, byte[] text, int from, int to) {
    long number = before;
    for (int at = from; at < to; at++) {
      number = TEN * number + text[at] - '0';
    }
    return number;
  }
}
