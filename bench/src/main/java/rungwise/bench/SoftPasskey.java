package rungwise.bench;

import java.io.ByteArrayOutputStream;
import java.math.BigInteger;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.interfaces.ECPublicKey;
import java.security.spec.ECGenParameterSpec;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A passkey without a device: one ES256 key that says that its holder was verified, as W3C Web
 * Authentication Level 3, 6.1 and 6.5, lays it out in bytes. For measuring alone: it asks nobody.
 */
final class SoftPasskey {

  private static final int ID_BYTES = 32;
  private static final int COORDINATE_BYTES = 32;
  private static final int AAGUID_BYTES = 16;
  private static final int USER_PRESENT = 0x01;
  private static final int USER_VERIFIED = 0x04;
  private static final int HAS_KEY = 0x40;
  private static final Pattern CHALLENGE = Pattern.compile("\"challenge\":\"([^\"]+)\"");
  private static final Pattern USER = Pattern.compile("\"user\":\\{[^}]*\"id\":\"([^\"]+)\"");

  /** CBOR (RFC 8949): a map of three, "fmt": "none", "attStmt": {}, "authData": bytes of 2. */
  private static final byte[] WITHOUT_ATTESTATION =
      join(
          new byte[] {(byte) 0xa3, 0x63},
          ascii("fmt"),
          new byte[] {0x64},
          ascii("none"),
          new byte[] {0x67},
          ascii("attStmt"),
          new byte[] {(byte) 0xa0, 0x68},
          ascii("authData"),
          new byte[] {0x59});

  /** COSE (RFC 9053): kty EC2, alg ES256, crv P-256, and x of 32 bytes follows. */
  private static final byte[] KEY_TO_X =
      new byte[] {(byte) 0xa5, 1, 2, 3, 0x26, 0x20, 1, 0x21, 0x58, 0x20};

  /** COSE: y of 32 bytes follows. */
  private static final byte[] KEY_TO_Y = new byte[] {0x22, 0x58, 0x20};

  private final String origin;
  private final byte[] site;
  private final byte[] id = new byte[ID_BYTES];
  private final KeyPair key;
  private String holder = "";

  /** A new one for a site, which must have a name. */
  SoftPasskey(URI site) throws GeneralSecurityException {
    this.origin = site.getScheme() + "://" + site.getAuthority();
    this.site = sha256(ascii(site.getHost()));
    new SecureRandom().nextBytes(id);
    KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
    generator.initialize(new ECGenParameterSpec("secp256r1"));
    this.key = generator.generateKeyPair();
  }

  /** What a browser sends for a new passkey. */
  String made(String question) throws GeneralSecurityException {
    holder = found(USER, question);
    byte[] data =
        join(
            head(USER_PRESENT | USER_VERIFIED | HAS_KEY),
            new byte[AAGUID_BYTES],
            two(id.length),
            id,
            publicPart());
    return answer(
        json("clientDataJSON", text(said("webauthn.create", question)))
            + ","
            + json("attestationObject", text(join(WITHOUT_ATTESTATION, two(data.length), data)))
            + ",\"transports\":[]");
  }

  /** What a browser sends when the passkey is used. */
  String used(String question) throws GeneralSecurityException {
    byte[] data = head(USER_PRESENT | USER_VERIFIED);
    byte[] said = said("webauthn.get", question);
    Signature signature = Signature.getInstance("SHA256withECDSA");
    signature.initSign(key.getPrivate());
    signature.update(join(data, sha256(said)));
    return answer(
        String.join(
            ",",
            json("clientDataJSON", text(said)),
            json("authenticatorData", text(data)),
            json("signature", text(signature.sign())),
            json("userHandle", holder)));
  }

  private String answer(String response) {
    return "{"
        + String.join(
            ",",
            json("id", text(id)),
            json("rawId", text(id)),
            json("type", "public-key"),
            "\"clientExtensionResults\":{}",
            "\"response\":{" + response + "}")
        + "}";
  }

  private static String json(String name, String text) {
    return "\"" + name + "\":\"" + text + "\"";
  }

  /** Hash of the site, flags, and a count of uses that stays 0. */
  private byte[] head(int flags) {
    return join(site, new byte[] {(byte) flags}, new byte[Integer.BYTES]);
  }

  private byte[] said(String kind, String question) {
    return ascii(
        "{\"type\":\""
            + kind
            + "\",\"challenge\":\""
            + found(CHALLENGE, question)
            + "\",\"origin\":\""
            + origin
            + "\",\"crossOrigin\":false}");
  }

  private byte[] publicPart() {
    var point = ((ECPublicKey) key.getPublic()).getW();
    return join(KEY_TO_X, coordinate(point.getAffineX()), KEY_TO_Y, coordinate(point.getAffineY()));
  }

  private static byte[] coordinate(BigInteger number) {
    byte[] bytes = number.toByteArray();
    var padded = new byte[COORDINATE_BYTES];
    int length = Math.min(bytes.length, COORDINATE_BYTES);
    System.arraycopy(bytes, bytes.length - length, padded, COORDINATE_BYTES - length, length);
    return padded;
  }

  private static byte[] two(int number) {
    return ByteBuffer.allocate(Short.BYTES).putShort((short) number).array();
  }

  private static byte[] join(byte[]... parts) {
    var joined = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      joined.writeBytes(part);
    }
    return joined.toByteArray();
  }

  private static byte[] sha256(byte[] bytes) throws GeneralSecurityException {
    return MessageDigest.getInstance("SHA-256").digest(bytes);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static String text(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  private static String found(Pattern pattern, String text) {
    Matcher matcher = pattern.matcher(text);
    if (matcher.find()) {
      return matcher.group(1);
    }
    throw new IllegalStateException("bug: no " + pattern + " in " + text);
  }
}
