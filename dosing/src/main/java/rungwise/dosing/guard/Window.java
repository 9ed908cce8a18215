package rungwise.dosing.guard;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Injection;
import rungwise.quantities.TimeSpan;

/**
 * How many injections fit into any span of time, that far end left out. Reports come in out of
 * order, so injections after the instant that is asked about count like those before it.
 */
record Window(TimeSpan span, int most) {

  /** The latest injections that leave no room for another one at an instant; as many as fit. */
  Optional<List<Injection>> fullAt(List<Injection> injections, Instant at) {
    for (int end = injections.size(); end >= most; end--) {
      List<Injection> row = injections.subList(end - most, end);
      Instant from = earlier(row.getFirst().at(), at);
      Instant to = row.getLast().at().isAfter(at) ? row.getLast().at() : at;
      if (span.after(from).isAfter(to)) {
        return Optional.of(row);
      }
    }
    return Optional.empty();
  }

  /** The first instant, not before one, at which there is room for another injection. */
  Instant freeFrom(List<Injection> injections, Instant at) {
    Instant free = at;
    Optional<List<Injection>> full = fullAt(injections, free);
    while (full.isPresent()) {
      free = span.after(full.get().getFirst().at());
      full = fullAt(injections, free);
    }
    return free;
  }

  private static Instant earlier(Instant one, Instant other) {
    return one.isBefore(other) ? one : other;
  }
}
