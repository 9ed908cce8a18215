package rungwise.checks.histories;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.checks.histories.NeverBends.Event;
import rungwise.checks.histories.NeverBends.Lasting;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.quantities.Volume;

/**
 * Every history of up to four injections under each sample protocol. At each point the prescriber
 * signs the proposed dose, the lowest allowed or the highest allowed one; where nothing is allowed,
 * the man injects the lowest step all the same.
 */
final class FourInjectionsTest {

  private static final int INJECTIONS = 4;

  /** The histories that follow one first injection are many, those of another few. */
  private static final int PARALLEL_DEPTH = 2;

  private static final long LEAST = 1_000_000;

  private static final List<Lasting> DURATIONS =
      List.of(
          Lasting.exactly(60),
          Lasting.exactly(61),
          Lasting.exactly(120),
          Lasting.between(30, 121),
          Lasting.notKnown(),
          Lasting.exactly(240),
          Lasting.atLeast(20));

  static List<NeverBends> samples() {
    return NeverBends.samples();
  }

  @ParameterizedTest
  @MethodSource("samples")
  @Tag("long")
  void no_history_of_four_injections_leads_past_what_never_bends(NeverBends sample) {
    assertThat(walk(sample, List.of())).isGreaterThan(LEAST);
  }

  /** Checks a history and all that can follow it; gives back how many were checked. */
  private static long walk(NeverBends sample, List<Event> events) {
    Advice advice = sample.advice(events);
    sample.check(events, advice);
    requireNoStepUpUnasked(events, advice);
    if (events.size() == INJECTIONS) {
      return 1;
    }
    Stream<Event> next = next(sample, advice).stream();
    return 1
        + (events.size() < PARALLEL_DEPTH ? next.parallel() : next)
            .mapToLong(event -> walk(sample, with(events, event)))
            .sum();
  }

  private static void requireNoStepUpUnasked(List<Event> events, Advice advice) {
    if (advice.decision() instanceof Decision.StepUp
        && (events.getLast().causes() != SimpleCauses.NONE_FOUND
            || events.getLast().grade().isUseful())) {
      throw new AssertionError("after " + events + ": " + advice);
    }
  }

  private static List<Event> with(List<Event> events, Event event) {
    var longer = new ArrayList<>(events);
    longer.add(event);
    return longer;
  }

  private static List<Event> next(NeverBends sample, Advice advice) {
    List<Volume> allowed =
        sample.ladder().rungs().stream().filter(rung -> advice.isAllowed(rung)).toList();
    if (allowed.isEmpty()) {
      Volume lowest = sample.ladder().first();
      return List.of(new Event(lowest, Grade.NONE, DURATIONS.getFirst(), SimpleCauses.NONE_FOUND));
    }
    var next = new ArrayList<Event>();
    Stream.concat(
            advice.decision().proposed().stream(), Stream.of(allowed.getFirst(), allowed.getLast()))
        .distinct()
        .forEach(volume -> outcomes(volume, next));
    return next;
  }

  private static void outcomes(Volume volume, List<Event> next) {
    for (Grade grade : Grade.values()) {
      for (Lasting lasting : DURATIONS) {
        next.add(new Event(volume, grade, lasting, SimpleCauses.NONE_FOUND));
      }
      if (!grade.isUseful()) {
        next.add(new Event(volume, grade, DURATIONS.getFirst(), SimpleCauses.NOT_ASKED));
      }
    }
  }
}
