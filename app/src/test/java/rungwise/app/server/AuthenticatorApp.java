package rungwise.app.server;

import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.time.Instant;
import java.util.Arrays;
import java.util.regex.Pattern;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** An authenticator app as RFC 6238 describes one, written for itself alone. */
final class AuthenticatorApp {

  private static final Pattern SHOWN = Pattern.compile("class=\"code secret\">([A-Z2-7 ]+)<");
  private static final String SYMBOLS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

  private final byte[] secret;

  private AuthenticatorApp(byte[] secret) {
    this.secret = secret;
  }

  /** Types the secret of the page that offers it. */
  static AuthenticatorApp typedFrom(String page) {
    var shown = SHOWN.matcher(page);
    if (!shown.find()) {
      throw new AssertionError("no secret in " + page);
    }
    BigInteger bits = BigInteger.ONE;
    String symbols = shown.group(1).replace(" ", "");
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
      byte[] hash = mac.doFinal(ByteBuffer.allocate(8).putLong(at.getEpochSecond() / 30).array());
      int start = hash[19] & 15;
      int number =
          ((hash[start] & 127) << 24)
              | ((hash[start + 1] & 255) << 16)
              | ((hash[start + 2] & 255) << 8)
              | (hash[start + 3] & 255);
      return "%06d".formatted(number % 1_000_000);
    } catch (GeneralSecurityException e) {
      throw new AssertionError(e);
    }
  }
}
