package rungwise.clinic.factor;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import rungwise.clinic.people.SignInName;

/**
 * What an authenticator app and the program both know: 160 random bits, the length that RFC 4226,
 * section 4, recommends.
 *
 * @param base32 32 symbols of base 32
 */
public record FactorSecret(String base32) {

  /** How many random bytes make one secret. */
  public static final int BYTES = 20;

  private static final String EACH_GROUP = "(.{4})(?!$)";

  public FactorSecret {
    if (Base32.read(base32).length != BYTES) {
      throw new IllegalArgumentException("bug: a secret of another length");
    }
  }

  public static FactorSecret of(byte[] random) {
    return new FactorSecret(Base32.write(random));
  }

  byte[] bytes() {
    return Base32.read(base32);
  }

  /** In groups of four, for typing it into an app. */
  public String grouped() {
    return base32.replaceAll(EACH_GROUP, "$1 ");
  }

  /** The address that an app reads from a picture (common practice, no standard). */
  public String address(String clinic, SignInName name) {
    String issuer = encode(clinic);
    return "otpauth://totp/%s:%s?secret=%s&issuer=%s"
        .formatted(issuer, encode(name.text()), base32, issuer);
  }

  private static String encode(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /** Without the secret, so that it reaches no log. */
  @Override
  public String toString() {
    return "FactorSecret";
  }
}
