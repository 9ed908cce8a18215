package rungwise.clinic.factor;

import java.nio.ByteBuffer;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * The one-time code of a secret at a time: RFC 6238 with HMAC-SHA-1 and steps of 30 seconds since
 * 1970, cut to decimal digits as in RFC 4226, section 5.3. These are what authenticator apps take
 * for granted (common practice, no source).
 */
final class TimeCode {

  static final Duration STEP = Duration.ofSeconds(30);
  static final int DIGITS = 6;

  private static final String ALGORITHM = "HmacSHA1";
  private static final int OFFSET_BITS = 0x0f;
  private static final int WITHOUT_SIGN = 0x7fffffff;
  private static final int TEN = 10;

  private TimeCode() {}

  /** The step that an instant lies in. */
  static long stepAt(Instant at) {
    return Math.floorDiv(at.getEpochSecond(), STEP.toSeconds());
  }

  static String at(FactorSecret secret, long step) {
    return of(secret.bytes(), step, DIGITS);
  }

  static String of(byte[] key, long counter, int digits) {
    byte[] hash = hash(key, ByteBuffer.allocate(Long.BYTES).putLong(counter).array());
    int offset = hash[hash.length - 1] & OFFSET_BITS;
    int number = ByteBuffer.wrap(hash, offset, Integer.BYTES).getInt() & WITHOUT_SIGN;
    int cut = number % Math.toIntExact(Math.round(Math.pow(TEN, digits)));
    return String.format(Locale.ROOT, "%0" + digits + "d", cut);
  }

  private static byte[] hash(byte[] key, byte[] message) {
    try {
      var mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(key, ALGORITHM));
      return mac.doFinal(message);
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("bug: every Java has " + ALGORITHM, e);
    }
  }
}
