package rungwise.clinic.clock;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What is believed of the clock. */
public sealed interface ClockBelief {

  /** Of a clock that is given and not doubted. */
  static ClockBelief given() {
    return new Compared(Duration.ZERO);
  }

  /**
   * Something independent of this machine agrees with it.
   *
   * @param slack how far it may be from the truth all the same, to either side
   */
  record Compared(Duration slack) implements ClockBelief {}

  /**
   * Nothing independent answers.
   *
   * @param confirmed when a person has last said, since the start and not longer than a day ago,
   *     that date and time are right
   * @param stranger by how much the clock of one browser elsewhere differs; one alone decides
   *     nothing
   */
  record NotCompared(Optional<Confirmed> confirmed, Optional<Duration> stranger)
      implements ClockBelief {}

  /**
   * It is wrong, or was set while nobody can say to what.
   *
   * @param signs by what that is known, at least one
   */
  record Wrong(List<Sign> signs) implements ClockBelief {
    public Wrong {
      signs = List.copyOf(signs);
    }
  }

  /** A person's word for date and time. */
  record Confirmed(String by, Instant at) {}

  /**
   * One thing that shows that it is wrong.
   *
   * @param ahead by how much it is ahead of what that says; below zero if it is behind
   */
  record Sign(What what, Duration ahead) {

    /** What is compared with the clock. */
    public enum What {
      TIME_SOURCE("the time source"),
      BROWSERS("most browsers elsewhere"),
      RECORD("the newest entry of the record"),
      STEADY_COUNT("its own steady count: somebody or something has set it");

      private final String words;

      What(String words) {
        this.words = words;
      }
    }

    /** "it is 1 day ahead of the time source". */
    public String words() {
      return "it is "
          + span(ahead.abs())
          + (ahead.isNegative() ? " behind " : " ahead of ")
          + what.words;
    }
  }

  /** Whether answers may rest on it. */
  default boolean isKnown() {
    return switch (this) {
      case Compared compared -> true;
      case NotCompared alone -> alone.confirmed().isPresent();
      case Wrong wrong -> false;
    };
  }

  /** Why no answer may rest on it; empty if one may. */
  default Optional<String> doubt() {
    return switch (this) {
      case Compared compared -> Optional.empty();
      case NotCompared alone ->
          alone.confirmed().isPresent()
              ? Optional.empty()
              : Optional.of("nobody has confirmed the date and time of the server");
      case Wrong wrong ->
          Optional.of(
              wrong.signs().stream()
                  .map(Sign::words)
                  .collect(Collectors.joining("; ", "the clock of the server is wrong: ", "")));
    };
  }

  /** Whether a person's word for date and time makes it known; no word mends what others show. */
  default boolean isAskedOfPeople() {
    return switch (this) {
      case Compared compared -> false;
      case NotCompared alone -> alone.confirmed().isEmpty();
      case Wrong wrong ->
          wrong.signs().stream().allMatch(sign -> sign.what() == Sign.What.STEADY_COUNT);
    };
  }

  /** How far the truth may be from it, to either side, while answers rest on it. */
  default Duration slack() {
    return switch (this) {
      case Compared compared -> compared.slack();
      case NotCompared alone -> ClockWatch.TOLERANCE;
      case Wrong wrong -> Duration.ZERO;
    };
  }

  /** A word that is kept with each entry; one that was written is never renamed. */
  default String token() {
    return switch (this) {
      case Compared compared -> "compared";
      case NotCompared alone -> alone.confirmed().isPresent() ? "confirmed" : "not_compared";
      case Wrong wrong -> WRONG;
    };
  }

  /** The word of an entry that was written by a clock that was known to be wrong. */
  String WRONG = "wrong";

  /** A span in its largest whole unit: "1 day", "3 hours", "12 minutes". */
  static String span(Duration span) {
    if (span.toDays() > 0) {
      return counted(span.toDays(), "day");
    }
    return span.toHours() > 0
        ? counted(span.toHours(), "hour")
        : counted(span.toMinutes(), "minute");
  }

  private static String counted(long count, String unit) {
    return count + " " + unit + (count == 1 ? "" : "s");
  }
}
