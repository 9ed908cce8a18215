package rungwise.dosing.predictive;

import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** Two workers at once, each of which takes every second task from the end. */
final class TwoThreads {

  private TwoThreads() {}

  static void share(int count, Supplier<IntConsumer> work) {
    try (var executor = Executors.newFixedThreadPool(2)) {
      Future<?> other = executor.submit(() -> take(count - 2, work.get()));
      take(count - 1, work.get());
      other.get();
    } catch (Exception failed) {
      throw new IllegalStateException(failed);
    }
  }

  private static void take(int last, IntConsumer work) {
    for (int task = last; task >= 0; task -= 2) {
      work.accept(task);
    }
  }
}
