package rungwise.app.clock;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rungwise.clinic.clock.ClockWatch;

/** Asks the time source, where one is set: at the start, and then every ten minutes. */
public final class ClockRounds implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(ClockRounds.class);
  private static final long MINUTES_BETWEEN = 10;

  private final ClockWatch watch;
  private final List<Future<?>> planned = new ArrayList<>();
  private final ScheduledExecutorService thread =
      new ScheduledThreadPoolExecutor(
          1, Thread.ofPlatform().daemon().name("clock-rounds").factory());

  private ClockRounds(ClockWatch watch) {
    this.watch = watch;
  }

  /** Begins to ask, if there is somebody to be asked. */
  public static ClockRounds begin(ClockWatch watch, ClockSettings settings) {
    var rounds = new ClockRounds(watch);
    if (settings instanceof ClockSettings.Watched watched) {
      watched.timeSource().map(TimeSource::at).ifPresent(rounds::plan);
    }
    return rounds;
  }

  private void plan(TimeSource source) {
    planned.add(
        thread.scheduleWithFixedDelay(() -> ask(source), 0, MINUTES_BETWEEN, TimeUnit.MINUTES));
  }

  private void ask(TimeSource source) {
    try {
      Optional<Instant> said = source.ask();
      said.ifPresentOrElse(
          watch::told, () -> LOG.warn("The time source {} does not answer", source.address()));
      watch.belief().doubt().filter(doubt -> said.isPresent()).ifPresent(LOG::error);
    } catch (RuntimeException e) {
      LOG.error("The time source could not be asked: {}", e.getClass().getName());
    }
  }

  @Override
  public void close() {
    planned.forEach(one -> one.cancel(/* mayInterruptIfRunning= */ true));
    thread.shutdownNow();
  }
}
