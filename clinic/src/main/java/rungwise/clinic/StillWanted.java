package rungwise.clinic;

import java.util.function.BooleanSupplier;

/**
 * Whether somebody still waits for what is being worked out. Long readings ask at each of their
 * steps; work that nobody can leave, such as a form that was sent, is never ended by it.
 */
public final class StillWanted {

  private static final ScopedValue<BooleanSupplier> SOMEBODY = ScopedValue.newInstance();

  private StillWanted() {}

  /**
   * Reading for somebody who may leave.
   *
   * @param <X> what may go wrong
   */
  @FunctionalInterface
  public interface Reading<X extends Throwable> {
    /** Reads and shows. */
    void run() throws X;
  }

  /**
   * Nobody waits any more. It is an error and no exception, so that nothing takes it for a damaged
   * record or a failure that it may go on after.
   */
  public static final class NobodyWaits extends Error {
    private static final long serialVersionUID = 1L;

    private NobodyWaits() {
      super("Whoever had asked is gone.");
    }
  }

  /**
   * Reads for somebody, until it is done or he is gone.
   *
   * @param isThere is asked at each step, by the thread that reads
   * @throws NobodyWaits once he is gone
   */
  public static <X extends Throwable> void by(BooleanSupplier isThere, Reading<X> reading)
      throws X {
    ScopedValue.where(SOMEBODY, isThere)
        .call(
            (ScopedValue.CallableOp<Boolean, X>)
                () -> {
                  reading.run();
                  return true;
                });
  }

  /**
   * Ends here what nobody waits for any more.
   *
   * @throws NobodyWaits if whoever had asked is gone
   */
  public static void orStop() {
    if (SOMEBODY.isBound() && !SOMEBODY.get().getAsBoolean()) {
      throw new NobodyWaits();
    }
  }
}
