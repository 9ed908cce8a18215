package rungwise.web.secrets;

import io.github.bucket4j.Bandwidth;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.TimeMeter;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReferenceArray;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Buckets by name in a table of fixed size, so that no number of names that strangers make up ever
 * pushes one out. Which bucket a name has is decided by a secret of this process: nobody can look
 * for a name that shares the bucket of another.
 */
final class TryTable {

  private static final int SIZE = 1 << 16;
  private static final String ALGORITHM = "HmacSHA256";
  private static final int SECRET_BYTES = 32;

  private final Bandwidth limit;
  private final TimeMeter meter;
  private final SecretKeySpec secret;
  private final AtomicReferenceArray<Bucket> buckets = new AtomicReferenceArray<>(SIZE);

  TryTable(Bandwidth limit, TimeMeter meter) {
    this.limit = limit;
    this.meter = meter;
    var random = new byte[SECRET_BYTES];
    new SecureRandom().nextBytes(random);
    this.secret = new SecretKeySpec(random, ALGORITHM);
  }

  /** Takes one try, or says how long to wait for it. */
  Optional<Duration> take(String name) {
    var probe = bucket(name).tryConsumeAndReturnRemaining(1);
    return probe.isConsumed()
        ? Optional.empty()
        : Optional.of(Duration.ofNanos(probe.getNanosToWaitForRefill()));
  }

  /** Whether there is a try left. */
  boolean has(String name) {
    return bucket(name).getAvailableTokens() > 0;
  }

  /** Gives one try back. */
  void giveBack(String name) {
    bucket(name).addTokens(1);
  }

  /** Gives every try back. */
  void forget(String name) {
    buckets.set(placeOf(name), null);
  }

  private Bucket bucket(String name) {
    int place = placeOf(name);
    return buckets.updateAndGet(
        place,
        found ->
            found == null
                ? Bucket.builder().addLimit(limit).withCustomTimePrecision(meter).build()
                : found);
  }

  private int placeOf(String name) {
    try {
      var mac = Mac.getInstance(ALGORITHM);
      mac.init(secret);
      byte[] hash = mac.doFinal(name.getBytes(StandardCharsets.UTF_8));
      return Math.floorMod(ByteBuffer.wrap(hash).getInt(), SIZE);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("bug: every Java has " + ALGORITHM, e);
    }
  }
}
