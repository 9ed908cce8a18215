package rungwise.web.secrets;

import io.github.bucket4j.TimeMeter;
import java.time.InstantSource;

/** Bucket time from the given clock. */
record InstantMeter(InstantSource clock) implements TimeMeter {

  private static final long NANOS_PER_MILLI = 1_000_000;

  @Override
  public long currentTimeNanos() {
    return clock.millis() * NANOS_PER_MILLI;
  }

  @Override
  public boolean isWallClockBased() {
    return true;
  }
}
