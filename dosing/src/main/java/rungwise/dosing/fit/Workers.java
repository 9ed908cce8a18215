package rungwise.dosing.fit;

import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** Who does the work. What comes out is the same for any of them, to the last digit. */
@FunctionalInterface
public interface Workers {

  /**
   * Does tasks 0 to count - 1, each once, in any order, and returns when all are done. Every worker
   * asks once for what it does with a task, which need not be safe for two of them.
   */
  void share(int count, Supplier<IntConsumer> work);

  /** One that does all in turn. */
  static Workers alone() {
    return (count, work) -> {
      IntConsumer own = work.get();
      for (int task = 0; task < count; task++) {
        own.accept(task);
      }
    };
  }
}
