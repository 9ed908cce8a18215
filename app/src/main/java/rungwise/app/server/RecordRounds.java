package rungwise.app.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rungwise.clinic.soundness.Doubts;
import rungwise.clinic.soundness.Flaw;
import rungwise.store.RecordWatch;
import rungwise.store.journal.BrokenEntry;

/**
 * Looks at the record while the server runs: at what every course rests on before the first page
 * and then every minute, at the whole of it at the start and then every day.
 */
final class RecordRounds implements Doubts, AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(RecordRounds.class);
  private static final long SECONDS_TO_END = 10;
  private static final long SECONDS_FOR_AN_ANSWER = 3;
  private static final long BETWEEN_DOUBTS = TimeUnit.MINUTES.toNanos(1);

  private final RecordWatch watch;
  private final AtomicLong lastDoubt = new AtomicLong(System.nanoTime() - BETWEEN_DOUBTS);
  private final List<Future<?>> planned = new ArrayList<>();
  private final ScheduledExecutorService thread =
      new ScheduledThreadPoolExecutor(
          1, Thread.ofPlatform().daemon().name("record-rounds").factory());

  private RecordRounds(RecordWatch watch) {
    this.watch = watch;
  }

  /** Looks at what every course rests on, and goes on beside what pages do. */
  static RecordRounds begin(RecordWatch watch) {
    var rounds = new RecordRounds(watch);
    rounds.lookAtFoundation();
    rounds.planned.add(
        rounds.thread.scheduleWithFixedDelay(rounds::lookAtFoundation, 1, 1, TimeUnit.MINUTES));
    rounds.planned.add(
        rounds.thread.scheduleWithFixedDelay(rounds::lookAtAll, 0, 1, TimeUnit.DAYS));
    return rounds;
  }

  private void lookAtFoundation() {
    safely(
        () -> {
          boolean wasSound = watch.flaws().isEmpty();
          watch.lookAtFoundation();
          if (watch.isEndBehind()) {
            LOG.error("The file journal.end cannot be written: a loss would not be noticed");
          }
          if (wasSound) {
            watch.flaws().forEach(flaw -> LOG.error("Not as it was written: {}", flaw.words()));
          }
        });
  }

  private void lookAtAll() {
    safely(
        () -> {
          Optional<BrokenEntry> broken = watch.lookAtAll();
          if (broken.isEmpty()) {
            LOG.info("The whole record is as it was written");
          } else {
            LOG.error("The record is not as it was written: {} Run verify.", broken.get().words());
          }
        });
  }

  @Override
  public List<Flaw> shared() {
    return watch.flaws();
  }

  @Override
  public Optional<String> firstBroken() {
    return watch.firstBroken().map(BrokenEntry::words);
  }

  @Override
  public boolean isToBlame(Throwable failure) {
    if (watch.isDamage(failure) || isKnown()) {
      return true;
    }
    lookNow();
    return isKnown();
  }

  @Override
  public void lookAgain() {
    thread.execute(this::lookAtAll);
  }

  private boolean isKnown() {
    return !watch.flaws().isEmpty() || watch.firstBroken().isPresent();
  }

  /** At most once a minute, and the answer does not wait for a walk that takes long. */
  private void lookNow() {
    long before = lastDoubt.get();
    long now = System.nanoTime();
    if (now - before < BETWEEN_DOUBTS || !lastDoubt.compareAndSet(before, now)) {
      return;
    }
    try {
      thread
          .submit(
              () -> {
                lookAtFoundation();
                lookAtAll();
              })
          .get(SECONDS_FOR_AN_ANSWER, TimeUnit.SECONDS);
    } catch (TimeoutException stillLooking) {
      LOG.warn("The whole record is still being looked at after a failure");
    } catch (ExecutionException | RejectedExecutionException notLooked) {
      LOG.warn("The record could not be looked at after a failure");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A look that fails is told, and the next one is tried all the same. */
  private void safely(Runnable look) {
    try {
      look.run();
    } catch (RuntimeException e) {
      if (!thread.isShutdown()) {
        LOG.error("The record could not be looked at: {}", e.getClass().getName());
      }
    }
  }

  /** Ends before the store is closed. */
  @Override
  public void close() {
    planned.forEach(look -> look.cancel(/* mayInterruptIfRunning= */ true));
    thread.shutdown();
    try {
      if (!thread.awaitTermination(SECONDS_TO_END, TimeUnit.SECONDS)) {
        LOG.warn("A look at the record has not ended yet");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
