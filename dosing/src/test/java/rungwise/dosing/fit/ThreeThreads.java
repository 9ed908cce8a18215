package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** Three workers at once, as a test needs them. */
final class ThreeThreads {

  private ThreeThreads() {}

  static void share(int count, Supplier<IntConsumer> work) {
    var next = new AtomicInteger();
    try (var executor = Executors.newFixedThreadPool(3)) {
      List<Future<?>> futures = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
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
      for (Future<?> future : futures) {
        future.get();
      }
    } catch (Exception failed) {
      throw new IllegalStateException(failed);
    }
  }
}
