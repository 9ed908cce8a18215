package rungwise.dosing.decision;

import java.util.Collection;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * One thing in which a decision that is asked again differs from the one that was kept.
 *
 * @param kept what was kept, for a reader
 * @param now what the engine says today
 */
public record Difference(Kind kind, String kept, String now) {

  /** What differs, the gravest first. */
  public enum Kind {
    DECISION,
    VOLUME,
    REASONS,
    VERDICTS,
    NOT_BEFORE,
    CHOICE,
    PROTOCOL,

    /** The values are the same, and the text is not. */
    WORDS
  }

  static Optional<Difference> of(Kind kind, Object kept, Object now) {
    return kept.equals(now)
        ? Optional.empty()
        : Optional.of(new Difference(kind, words(kept, now), words(now, kept)));
  }

  /**
   * A value; of a list only what the other one lacks, in its order, or all if only that differs.
   */
  private static String words(Object value, Object other) {
    if (value instanceof Optional<?> optional) {
      return optional.map(Object::toString).orElse("nothing");
    }
    if (value instanceof Collection<?> all && other instanceof Collection<?> others) {
      boolean isOrder = others.containsAll(all) && all.containsAll(others);
      return joined(all, one -> isOrder || !others.contains(one));
    }
    return value.toString();
  }

  private static String joined(Collection<?> all, Predicate<Object> isTold) {
    String text =
        all.stream().filter(isTold).map(Object::toString).collect(Collectors.joining(", "));
    return text.isEmpty() ? "nothing" : text;
  }
}
