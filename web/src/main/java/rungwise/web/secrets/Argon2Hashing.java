package rungwise.web.secrets;

import java.util.Objects;
import java.util.concurrent.Semaphore;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import rungwise.clinic.people.PasswordHashing;

/**
 * Argon2id with 19 MiB, two passes and one lane: the smallest set that the OWASP Password Storage
 * Cheat Sheet gives. Few hashes run at a time, so that a flood of tries cannot fill the memory.
 */
public final class Argon2Hashing implements PasswordHashing {

  private static final int SALT_BYTES = 16;
  private static final int HASH_BYTES = 32;
  private static final int LANES = 1;
  private static final int MEMORY_KIB = 19 * 1024;
  private static final int PASSES = 2;
  private static final int MOST_AT_A_TIME = 4;

  private final Argon2PasswordEncoder encoder;
  private final Semaphore places = new Semaphore(MOST_AT_A_TIME);

  /** At the cost that a clinic's passwords deserve. */
  public Argon2Hashing() {
    this(MEMORY_KIB, PASSES);
  }

  /**
   * At another cost. What was hashed at one cost is still matched at another.
   *
   * @param memoryKib 8 or more
   * @param passes 1 or more
   */
  public Argon2Hashing(int memoryKib, int passes) {
    encoder = new Argon2PasswordEncoder(SALT_BYTES, HASH_BYTES, LANES, memoryKib, passes);
  }

  @Override
  public String hash(String secret) {
    places.acquireUninterruptibly();
    try {
      return Objects.requireNonNull(encoder.encode(secret), "bug: no hash");
    } finally {
      places.release();
    }
  }

  @Override
  public boolean matches(String secret, String hash) {
    places.acquireUninterruptibly();
    try {
      return encoder.matches(secret, hash);
    } finally {
      places.release();
    }
  }
}
