package rungwise.web.access;

import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.people.AccountId;

/**
 * How much of the server's time a person's pages take. Each may take two minutes at once, and half
 * a second of every second in the long run: far more than anybody reads, and less than a processor.
 */
final class Shares {

  private static final long MOST = Duration.ofMinutes(2).toNanos();
  private static final long PARTS_A_SECOND = 2;

  private final LongSupplier nanos;
  private final Map<AccountId, Left> left = new ConcurrentHashMap<>();

  /** What is left of a share, and at which count that was so. */
  private record Left(long nanos, long at) {}

  /**
   * Everybody begins with a whole share.
   *
   * @param nanos a count of nanoseconds that nobody can set
   */
  Shares(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** Whether a person may ask for a page now. */
  boolean mayAsk(AccountId who) {
    return leftNow(who).nanos() > 0;
  }

  /** Where the count stands as a page is begun. */
  long begin() {
    return nanos.getAsLong();
  }

  /** Takes what a page has cost that was begun at a count. */
  void end(AccountId who, long begun) {
    long cost = nanos.getAsLong() - begun;
    left.compute(
        who,
        (id, before) -> {
          Left now = refilled(before);
          return new Left(now.nanos() - cost, now.at());
        });
  }

  private Left leftNow(AccountId who) {
    return refilled(left.get(who));
  }

  private Left refilled(@Nullable Left before) {
    long now = nanos.getAsLong();
    return before == null
        ? new Left(MOST, now)
        : new Left(Math.min(MOST, before.nanos() + (now - before.at()) / PARTS_A_SECOND), now);
  }
}
