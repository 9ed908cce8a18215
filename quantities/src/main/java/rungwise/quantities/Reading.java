package rungwise.quantities;

import java.util.Collection;
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
  record Refused<T>(List<Fault> placed) implements Reading<T> {
    public Refused {
      placed = List.copyOf(placed);
      if (placed.isEmpty()) {
        throw new IllegalArgumentException("bug: a refusal without a fault");
      }
    }

    /** Faults of the whole. */
    public Refused(Collection<String> texts) {
      this(texts.stream().map(Fault::ofForm).toList());
    }
  }

  static <T> Reading<T> of(T value) {
    return new Read<>(value, List.of());
  }

  static <T> Reading<T> refused(String fault) {
    return refused(Fault.ofForm(fault));
  }

  static <T> Reading<T> refused(Fault fault) {
    return new Refused<>(List.of(fault));
  }

  /** The value, if one was read. */
  default Optional<T> found() {
    return switch (this) {
      case Read<T> read -> Optional.of(read.value());
      case Refused<T> refused -> Optional.empty();
    };
  }

  /** The faults, each at its field; empty if a value was read. */
  default List<Fault> placed() {
    return List.of();
  }

  /** The words of the faults; empty if a value was read. */
  default List<String> faults() {
    return placed().stream().map(Fault::text).toList();
  }

  /** The same with its faults at a field, where they are at none. */
  default Reading<T> at(String field) {
    return switch (this) {
      case Read<T> read -> read;
      case Refused<T> refused ->
          new Refused<>(refused.placed().stream().map(fault -> fault.at(field)).toList());
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
      case Refused<T> refused -> new Refused<>(refused.placed());
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
