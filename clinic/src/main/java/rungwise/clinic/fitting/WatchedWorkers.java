package rungwise.clinic.fitting;

import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import rungwise.dosing.fit.Workers;

/** Workers who count what they have done, and do nothing more once they were told to stop. */
final class WatchedWorkers implements Workers {

  private final Workers workers;
  private final AtomicInteger done = new AtomicInteger();
  private volatile boolean isStopped = false;

  WatchedWorkers(Workers workers) {
    this.workers = workers;
  }

  void stop() {
    isStopped = true;
  }

  boolean isStopped() {
    return isStopped;
  }

  /** How many tasks were done since it was last asked to count anew. */
  int done() {
    return done.get();
  }

  void countAnew() {
    done.set(0);
  }

  @Override
  public void share(int count, Supplier<IntConsumer> work) {
    workers.share(
        count,
        () -> {
          IntConsumer own = work.get();
          return task -> {
            if (isStopped) {
              throw new CancellationException("The fit was stopped.");
            }
            own.accept(task);
            done.incrementAndGet();
          };
        });
  }
}
