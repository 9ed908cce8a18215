package rungwise.app.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import rungwise.clinic.fitting.FitWorkers;

/** So many threads, each of which takes the next task that nobody has taken. */
public final class ThreadWorkers implements FitWorkers {

  private final int threads;
  private final ExecutorService executor;

  public ThreadWorkers(int threads) {
    this.threads = threads;
    executor =
        Executors.newFixedThreadPool(
            threads, Thread.ofPlatform().daemon().name("fit-", 1).factory());
  }

  /** One fewer than there are processors, so that pages are still answered; at least one. */
  public static ThreadWorkers ofSpareProcessors() {
    return new ThreadWorkers(Math.max(1, Runtime.getRuntime().availableProcessors() - 1));
  }

  @Override
  public void share(int count, Supplier<IntConsumer> work) {
    var next = new AtomicInteger();
    List<Future<?>> futures = new ArrayList<>();
    for (int thread = 0; thread < Math.min(threads, count); thread++) {
      futures.add(
          executor.submit(
              () -> {
                IntConsumer own = work.get();
                for (int task = next.getAndIncrement();
                    task < count;
                    task = next.getAndIncrement()) {
                  own.accept(task);
                }
              }));
    }
    futures.forEach(ThreadWorkers::await);
  }

  private static void await(Future<?> future) {
    try {
      future.get();
    } catch (ExecutionException failed) {
      throw new IllegalStateException("bug: a part of the fit failed", failed.getCause());
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("The fit was stopped.", stopped);
    }
  }

  @Override
  public void close() {
    executor.shutdownNow();
  }
}
