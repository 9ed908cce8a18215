package rungwise.clinic;

import java.util.function.Supplier;

/** Port: work that is stored as a whole or not at all. */
public interface Transactions {

  /**
   * Does work whose changes are all kept when it returns and all undone when it throws. Two
   * transactions never overlap, so what one has read stays true until it ends. Inside another
   * transaction the work becomes a part of that one: if it throws, its own changes are undone, and
   * the outer one decides about the rest.
   *
   * <p>Slow work, such as hashing a password, belongs outside: others wait meanwhile.
   */
  <T> T inTransaction(Supplier<T> work);

  /**
   * Reads many times from the one state that everything is in now, or that the transaction is in.
   * Nothing may be written meanwhile.
   */
  default <T> T reading(Supplier<T> work) {
    return work.get();
  }
}
