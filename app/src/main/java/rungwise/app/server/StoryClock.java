package rungwise.app.server;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;

/**
 * A clock that an invented past is written with. Once the story is told it follows the real one.
 */
public final class StoryClock implements InstantSource {

  private final InstantSource real;
  private final AtomicReference<Duration> back = new AtomicReference<>(Duration.ZERO);

  public StoryClock(InstantSource real) {
    this.real = real;
  }

  @Override
  public Instant instant() {
    return real.instant().minus(back.get());
  }

  /** From now on it is that long ago. */
  public void goBack(Duration ago) {
    back.set(ago);
  }

  /** How long ago it is now. */
  public Duration back() {
    return Objects.requireNonNull(back.get());
  }

  /** From now on it is now. */
  public void comeHome() {
    back.set(Duration.ZERO);
  }
}
