package rungwise.web.secrets;

import io.github.bucket4j.Bandwidth;
import java.time.Duration;
import java.util.Optional;

/**
 * How often a code of six digits may be tried for one account, from wherever: five times, then once
 * every five minutes. Three of a million codes are good at a time, so that who knows the password
 * and tries for a whole day finds one with a chance of 1 in 1,100.
 */
public final class CodeLimiter {

  private static final int TRIES = 5;
  private static final int MINUTES_EACH = 5;

  private static final Bandwidth PER_ACCOUNT =
      Bandwidth.builder().capacity(TRIES).refillGreedy(1, Duration.ofMinutes(MINUTES_EACH)).build();

  private final TryTable accounts;

  public CodeLimiter(SteadyTime time) {
    this.accounts = new TryTable(PER_ACCOUNT, time.meter());
  }

  /** Counts one try, and says if it is one too many. */
  public Optional<Refusal> tryOnce(String account) {
    return accounts.take(account).map(Refusal::tooOften);
  }

  /** Notes that a code was right: earlier tries no longer count. */
  public void prove(String account) {
    accounts.forget(account);
  }
}
