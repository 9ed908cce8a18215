package rungwise.web.secrets;

import io.github.bucket4j.Bandwidth;
import java.time.Duration;
import java.util.Optional;

/**
 * How often one home may ask whether a sheet is current: a man who mistypes does not notice it, and
 * who makes up codes has no chance against 60 bits.
 */
public final class AskLimiter {

  private static final int TRIES = 20;
  private static final int SECONDS_EACH = 15;

  private static final Bandwidth PER_HOME =
      Bandwidth.builder().capacity(TRIES).refillGreedy(1, Duration.ofSeconds(SECONDS_EACH)).build();

  private final TryTable homes;

  public AskLimiter(SteadyTime time) {
    this.homes = new TryTable(PER_HOME, time.meter());
  }

  /** Counts one question from an address, and says if it is one too many. */
  public Optional<Refusal> askOnce(String address) {
    return homes.take(Addresses.network(address)).map(Refusal::tooOften);
  }
}
