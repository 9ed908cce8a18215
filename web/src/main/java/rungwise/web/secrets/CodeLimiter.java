package rungwise.web.secrets;

import io.github.bucket4j.Bandwidth;
import io.github.bucket4j.Bucket;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;

/**
 * How often a code of six digits may be tried for one account, from wherever: five times, then once
 * every five minutes. Three of a million codes are good at a time, so that who knows the password
 * and tries for a whole day finds one with a chance of 1 in 1,100.
 */
public final class CodeLimiter {

  private static final int MOST_KEPT = 20_000;
  private static final int TRIES = 5;
  private static final int MINUTES_EACH = 5;

  private static final Bandwidth PER_ACCOUNT =
      Bandwidth.builder().capacity(TRIES).refillGreedy(1, Duration.ofMinutes(MINUTES_EACH)).build();

  private final InstantMeter meter;
  private final Recent<String, Bucket> buckets = new Recent<>(MOST_KEPT);

  public CodeLimiter(InstantSource clock) {
    this.meter = new InstantMeter(clock);
  }

  /** Counts one try; if it is one too many, how long to wait before the next. */
  public Optional<Duration> tryOnce(String account) {
    var probe = bucket(account).tryConsumeAndReturnRemaining(1);
    return probe.isConsumed()
        ? Optional.empty()
        : Optional.of(Duration.ofNanos(probe.getNanosToWaitForRefill()));
  }

  /** Notes that a code was right: earlier tries no longer count. */
  public void prove(String account) {
    buckets.forget(account);
  }

  private Bucket bucket(String account) {
    return buckets.findOrMake(
        account,
        () -> Bucket.builder().addLimit(PER_ACCOUNT).withCustomTimePrecision(meter).build());
  }
}
