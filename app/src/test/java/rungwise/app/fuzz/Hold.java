package rungwise.app.fuzz;

import java.util.Objects;
import java.util.function.Function;
import java.util.function.Supplier;
import rungwise.quantities.Reading;

/** What holds of every reading. */
final class Hold {

  private Hold() {}

  static void that(boolean is, Supplier<String> what) {
    if (!is) {
      throw new AssertionError(what.get());
    }
  }

  /** Either a value, or faults each with words. */
  static <T> Reading<T> sound(Reading<T> reading) {
    that(reading.found().isPresent() == reading.faults().isEmpty(), reading::toString);
    that(reading.faults().stream().noneMatch(String::isBlank), () -> "a fault without words");
    return reading;
  }

  /** The same, and the value as it is written is read as the same value. */
  static <T> void readsBack(
      String text, Function<String, Reading<T>> reader, Function<T, String> writer) {
    sound(reader.apply(text))
        .found()
        .ifPresent(
            value -> {
              String written = writer.apply(value);
              same(value, sound(reader.apply(written)), text, written);
            });
  }

  private static <T> void same(T value, Reading<T> again, String text, String written) {
    that(
        Objects.equals(value, again.found().orElse(null)),
        () -> "read from \"%s\", written \"%s\", read as %s".formatted(text, written, again));
  }
}
