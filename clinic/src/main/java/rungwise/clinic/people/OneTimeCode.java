package rungwise.clinic.people;

import java.math.BigInteger;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A secret that is shown once and used once: 80 random bits as 16 digits and letters in groups of
 * four, without I, L, O and U, which are misread.
 *
 * @param text such as "7KQ2-M4XA-0B9D-ZR5C"
 */
public record OneTimeCode(String text) {

  /** How many random bytes make one code. */
  public static final int BYTES = 10;

  private static final String SYMBOLS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final int BITS_IN_A_SYMBOL = 5;
  private static final int LAST_SYMBOL = (1 << BITS_IN_A_SYMBOL) - 1;
  private static final int SYMBOLS_IN_A_GROUP = 4;
  private static final int SYMBOLS_IN_A_CODE = BYTES * Byte.SIZE / BITS_IN_A_SYMBOL;
  private static final Pattern ACCEPTED =
      Pattern.compile("[" + SYMBOLS + "]{4}(?:-[" + SYMBOLS + "]{4}){3}");

  public OneTimeCode {
    if (!ACCEPTED.matcher(text).matches()) {
      throw new IllegalArgumentException("bug: a one-time code of another form");
    }
  }

  /**
   * The code of {@value #BYTES} random bytes.
   *
   * @throws IllegalArgumentException if there are more or fewer
   */
  public static OneTimeCode of(byte[] random) {
    if (random.length != BYTES) {
      throw new IllegalArgumentException("bug: a one-time code of " + random.length + " bytes");
    }
    var number = new BigInteger(1, random);
    var text = new StringBuilder();
    for (int place = SYMBOLS_IN_A_CODE - 1; place >= 0; place--) {
      int symbol = number.shiftRight(place * BITS_IN_A_SYMBOL).intValue() & LAST_SYMBOL;
      text.append(SYMBOLS.charAt(symbol));
    }
    return new OneTimeCode(grouped(text));
  }

  /**
   * What a person typed, in the form of a code: capitals, groups of four, and the letters that are
   * not in use read as the digits they look like. The result may still be no code at all.
   */
  public static String normal(String typed) {
    String symbols =
        typed
            .toUpperCase(Locale.ROOT)
            .replaceAll("[\\s-]", "")
            .replace('O', '0')
            .replace('I', '1')
            .replace('L', '1');
    return symbols.length() == SYMBOLS_IN_A_CODE ? grouped(new StringBuilder(symbols)) : "";
  }

  private static String grouped(StringBuilder symbols) {
    for (int at = SYMBOLS_IN_A_CODE - SYMBOLS_IN_A_GROUP; at > 0; at -= SYMBOLS_IN_A_GROUP) {
      symbols.insert(at, '-');
    }
    return symbols.toString();
  }

  /** Without the code, so that it reaches no log. */
  @Override
  public String toString() {
    return "OneTimeCode";
  }
}
