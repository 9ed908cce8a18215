package rungwise.quantities;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * What came of reading something a person wrote: a value, perhaps with notices, or every fault at
 * once.
 *
 * @param <T> what was wanted
 */
public sealed interface Reading<T> {

  /** A value was read. A notice tells the writer what was understood differently from the ink. */
  record Read<T>(T value, List<String> notices) implements Reading<T> {
    public Read {
      notices = List.copyOf(notices);
    }
  }

  /** Nothing was read. Each fault says what was given, what is accepted and what to do. */
  record Refused<T>(List<String> faults) implements Reading<T> {
    public Refused {
      faults = List.copyOf(faults);
      if (faults.isEmpty()) {
        throw new IllegalArgumentException("bug: a refusal without a fault");
      }
    }
  }

  static <T> Reading<T> of(T value) {
    return new Read<>(value, List.of());
  }

  static <T> Reading<T> refused(String fault) {
    return new Refused<>(List.of(fault));
  }

  /** The value, if one was read. */
  default Optional<T> found() {
    return switch (this) {
      case Read<T> read -> Optional.of(read.value());
      case Refused<T> refused -> Optional.empty();
    };
  }

  /** The faults; empty if a value was read. */
  default List<String> faults() {
    return switch (this) {
      case Read<T> read -> List.of();
      case Refused<T> refused -> refused.faults();
    };
  }

  /** The notices; empty if nothing was read. */
  default List<String> notices() {
    return switch (this) {
      case Read<T> read -> read.notices();
      case Refused<T> refused -> List.of();
    };
  }

  /** The same reading of another type of value. */
  default <U> Reading<U> map(Function<? super T, ? extends U> change) {
    return switch (this) {
      case Read<T> read -> new Read<>(change.apply(read.value()), read.notices());
      case Refused<T> refused -> new Refused<>(refused.faults());
    };
  }

  /**
   * The value of something that cannot be wrong because the program itself wrote it.
   *
   * @throws IllegalStateException if it was refused after all
   */
  default T orThrow() {
    return switch (this) {
      case Read<T> read -> read.value();
      case Refused<T> refused -> throw new IllegalStateException("bug: " + refused.faults());
    };
  }
}
