package rungwise.store.factor;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.Cipher;
import javax.crypto.SecretKey;
import javax.crypto.spec.GCMParameterSpec;

/**
 * Short secrets encrypted with AES-256-GCM under a key that is not in the database. Each is bound
 * to its owner: moved to another row it cannot be opened.
 */
final class SealedText {

  private static final String CIPHER = "AES/GCM/NoPadding";
  private static final int NONCE_BYTES = 12;
  private static final int TAG_BITS = 128;

  private final SecretKey key;
  private final SecureRandom random = new SecureRandom();

  SealedText(SecretKey key) {
    this.key = key;
  }

  String seal(String secret, String owner) {
    var nonce = new byte[NONCE_BYTES];
    random.nextBytes(nonce);
    byte[] hidden = run(Cipher.ENCRYPT_MODE, nonce, owner, secret.getBytes(StandardCharsets.UTF_8));
    byte[] all = ByteBuffer.allocate(NONCE_BYTES + hidden.length).put(nonce).put(hidden).array();
    return Base64.getEncoder().encodeToString(all);
  }

  /**
   * The secret that was sealed for an owner.
   *
   * @throws IllegalStateException if it was changed, moved, or sealed under another key
   */
  String open(String sealed, String owner) {
    ByteBuffer all = ByteBuffer.wrap(Base64.getDecoder().decode(sealed));
    var nonce = new byte[NONCE_BYTES];
    all.get(nonce);
    var hidden = new byte[all.remaining()];
    all.get(hidden);
    return new String(run(Cipher.DECRYPT_MODE, nonce, owner, hidden), StandardCharsets.UTF_8);
  }

  private byte[] run(int mode, byte[] nonce, String owner, byte[] text) {
    try {
      var cipher = Cipher.getInstance(CIPHER);
      cipher.init(mode, key, new GCMParameterSpec(TAG_BITS, nonce));
      cipher.updateAAD(owner.getBytes(StandardCharsets.UTF_8));
      return cipher.doFinal(text);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(
          "A stored secret cannot be opened with the key of this folder: restore a backup", e);
    }
  }
}
