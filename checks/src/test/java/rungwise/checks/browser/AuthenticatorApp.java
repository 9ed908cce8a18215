package rungwise.checks.browser;

import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.time.Instant;
import java.util.Arrays;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** An authenticator app as RFC 6238 and RFC 4226 describe one, written for itself alone. */
final class AuthenticatorApp {

  private static final String SYMBOLS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
  private static final int SECONDS_OF_A_STEP = 30;

  private final byte[] secret;

  private AuthenticatorApp(byte[] secret) {
    this.secret = secret;
  }

  /** An app into which the secret of a page was typed. */
  static AuthenticatorApp typed(String shown) {
    String symbols = shown.replace(" ", "").strip();
    BigInteger bits = BigInteger.ONE;
    for (int at = 0; at < symbols.length(); at++) {
      int symbol = SYMBOLS.indexOf(symbols.charAt(at));
      bits = bits.multiply(BigInteger.valueOf(32)).add(BigInteger.valueOf(symbol));
    }
    byte[] withLeadingOne = bits.toByteArray();
    return new AuthenticatorApp(Arrays.copyOfRange(withLeadingOne, 1, withLeadingOne.length));
  }

  /** What it shows at a time. */
  String codeAt(Instant at) {
    try {
      var mac = Mac.getInstance("HmacSHA1");
      mac.init(new SecretKeySpec(secret, "HmacSHA1"));
      long step = at.getEpochSecond() / SECONDS_OF_A_STEP;
      byte[] hash = mac.doFinal(ByteBuffer.allocate(Long.BYTES).putLong(step).array());
      int number = ByteBuffer.wrap(hash, hash[hash.length - 1] & 15, 4).getInt() & 0x7fffffff;
      return "%06d".formatted(number % 1_000_000);
    } catch (GeneralSecurityException e) {
      throw new AssertionError(e);
    }
  }
}
