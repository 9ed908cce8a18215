package rungwise.web.secrets;

import io.github.bucket4j.TimeMeter;
import java.time.Duration;
import java.time.InstantSource;

/**
 * The time by which tries are counted and sessions end. It only goes forward: a wall clock that is
 * set back would stop every refill until it has caught up.
 */
public record SteadyTime(TimeMeter meter) {

  private static final long NANOS_PER_MILLI = 1_000_000;

  /** The processor's own count where the clinic runs on the system's clock, else the told clock. */
  public static SteadyTime beside(InstantSource clock) {
    return new SteadyTime(
        clock.equals(InstantSource.system()) ? TimeMeter.SYSTEM_NANOTIME : told(clock));
  }

  /** Where the count stands. */
  public long nanos() {
    return meter.currentTimeNanos();
  }

  /** How long ago the count stood there. */
  public Duration since(long nanos) {
    return Duration.ofNanos(nanos() - nanos);
  }

  private static TimeMeter told(InstantSource clock) {
    return new TimeMeter() {
      @Override
      public long currentTimeNanos() {
        return clock.millis() * NANOS_PER_MILLI;
      }

      @Override
      public boolean isWallClockBased() {
        return false;
      }
    };
  }
}
