package rungwise.clinic.factor;

import java.math.BigInteger;
import java.util.regex.Pattern;

/** Bytes as capital letters and the digits 2 to 7 (RFC 4648, section 6), without padding. */
final class Base32 {

  private static final String SYMBOLS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
  private static final int BITS_IN_A_SYMBOL = 5;
  private static final int LAST_SYMBOL = (1 << BITS_IN_A_SYMBOL) - 1;
  private static final Pattern ACCEPTED = Pattern.compile("[A-Z2-7]*");

  private Base32() {}

  static String write(byte[] bytes) {
    int symbols = Math.ceilDiv(bytes.length * Byte.SIZE, BITS_IN_A_SYMBOL);
    int unused = symbols * BITS_IN_A_SYMBOL - bytes.length * Byte.SIZE;
    BigInteger number = new BigInteger(1, bytes).shiftLeft(unused);
    var text = new StringBuilder();
    for (int place = symbols - 1; place >= 0; place--) {
      int symbol = number.shiftRight(place * BITS_IN_A_SYMBOL).intValue() & LAST_SYMBOL;
      text.append(SYMBOLS.charAt(symbol));
    }
    return text.toString();
  }

  /**
   * The bytes of a text that {@link #write} made.
   *
   * @throws IllegalArgumentException if it holds another symbol
   */
  static byte[] read(String text) {
    if (!ACCEPTED.matcher(text).matches()) {
      throw new IllegalArgumentException("bug: not in base 32");
    }
    BigInteger number = BigInteger.ZERO;
    for (int at = 0; at < text.length(); at++) {
      int symbol = SYMBOLS.indexOf(text.charAt(at));
      number = number.shiftLeft(BITS_IN_A_SYMBOL).add(BigInteger.valueOf(symbol));
    }
    var bytes = new byte[text.length() * BITS_IN_A_SYMBOL / Byte.SIZE];
    BigInteger whole = number.shiftRight(text.length() * BITS_IN_A_SYMBOL % Byte.SIZE);
    for (int at = bytes.length - 1, shift = 0; at >= 0; at--, shift += Byte.SIZE) {
      bytes[at] = whole.shiftRight(shift).byteValue();
    }
    return bytes;
  }
}
