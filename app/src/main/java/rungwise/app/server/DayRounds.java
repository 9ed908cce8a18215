package rungwise.app.server;

import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rungwise.clinic.today.DayList;

/**
 * Makes rows of the day's list anew while the server runs, with at most a quarter of a processor:
 * those that no longer hold every second, and what is missing or changed every five minutes.
 */
final class DayRounds implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(DayRounds.class);
  private static final int AT_ONCE = 50;
  private static final int REST = 3;
  private static final long MINUTES_BETWEEN_REPAIRS = 5;
  private static final long SECONDS_TO_END = 10;

  private final DayList list;
  private final ScheduledExecutorService thread =
      new ScheduledThreadPoolExecutor(1, Thread.ofPlatform().daemon().name("day-list").factory());
  private final Future<?> repairs;
  private final Future<?> remakes;

  private DayRounds(DayList list) {
    this.list = list;
    this.repairs =
        thread.scheduleWithFixedDelay(
            () -> safely(this::repair), 0, MINUTES_BETWEEN_REPAIRS, TimeUnit.MINUTES);
    this.remakes =
        thread.scheduleWithFixedDelay(() -> safely(this::remake), 1, 1, TimeUnit.SECONDS);
  }

  /** Begins, beside what pages do. */
  static DayRounds begin(DayList list) {
    return new DayRounds(list);
  }

  private void repair() {
    int anew = list.repair();
    if (anew > 0) {
      LOG.error("Rows of the day's list were missing or changed and are made anew: {}", anew);
    }
  }

  private void remake() {
    int made;
    do {
      long began = System.nanoTime();
      made = list.remakeDue(AT_ONCE);
      rest(REST * (System.nanoTime() - began));
    } while (made == AT_ONCE && !thread.isShutdown());
  }

  private static void rest(long nanoseconds) {
    try {
      TimeUnit.NANOSECONDS.sleep(nanoseconds);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A round that fails is told, and the next one is tried all the same. */
  private void safely(Runnable round) {
    try {
      round.run();
    } catch (RuntimeException e) {
      if (!thread.isShutdown()) {
        LOG.error("The day's list could not be made anew: {}", e.getClass().getName());
      }
    }
  }

  /** Ends before the store is closed. */
  @Override
  public void close() {
    thread.shutdown();
    repairs.cancel(/* mayInterruptIfRunning= */ false);
    remakes.cancel(/* mayInterruptIfRunning= */ false);
    try {
      if (!thread.awaitTermination(SECONDS_TO_END, TimeUnit.SECONDS)) {
        LOG.warn("A round over the day's list has not ended yet");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
