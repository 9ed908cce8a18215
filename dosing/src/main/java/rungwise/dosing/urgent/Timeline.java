package rungwise.dosing.urgent;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rungwise.quantities.TimeSpan;

/**
 * Everything that was said of when an erection began. The earliest statement that nobody struck
 * counts, whoever made it and whenever: a later, milder word never shortens what was said before.
 *
 * @param starts the statements, in any order
 */
public record Timeline(List<Start> starts) {

  public Timeline {
    starts = List.copyOf(starts);
  }

  /** The first instant at which it may have begun, by the statements that name one. */
  public Optional<Instant> earliestCredible() {
    return starts.stream()
        .flatMap(start -> start.earliestInstant().stream())
        .min(Comparator.naturalOrder());
  }

  /**
   * How long it has lasted at an instant. Without any statement, with one of "not known" that names
   * no last time of softness, and with a start that lies after that instant, as by a wrong clock,
   * it is not known.
   */
  public Elapsed elapsed(Instant now) {
    Optional<TimeSpan> lasted =
        earliestCredible()
            .filter(start -> !start.isAfter(now))
            .map(start -> TimeSpan.between(start, now));
    if (starts.stream().anyMatch(Start::isOpenToThePast)) {
      return new Elapsed.Unknown(lasted);
    }
    return lasted
        .<Elapsed>map(Elapsed.Known::new)
        .orElseGet(() -> new Elapsed.Unknown(Optional.empty()));
  }
}
