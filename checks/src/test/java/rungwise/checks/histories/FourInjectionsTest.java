package rungwise.checks.histories;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.checks.histories.NeverBends.Event;
import rungwise.checks.histories.NeverBends.Lasting;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.quantities.Volume;

/**
 * Histories of up to four injections under each sample protocol. At each point the prescriber signs
 * the proposed dose, the lowest allowed or the highest allowed one; where nothing is allowed, the
 * man injects the lowest step all the same.
 *
 * <p>Histories after which the advice says the same of every step, and that end with the same
 * injection, are one state, and are gone on with once. That this loses no state is held against the
 * walk over every history of up to three injections; the walk over every one of four is long.
 */
final class FourInjectionsTest {

  private static final int INJECTIONS = 4;

  /** The histories that follow one first injection are many, those of another few. */
  private static final int PARALLEL_DEPTH = 2;

  private static final long LEAST = 1_000_000;
  private static final int INJECTIONS_OF_A_FULL_WALK = 3;

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

  /** What the advice says of every step, and the injection that it follows. */
  private record State(
      Decision decision,
      List<TitrationRule> reasons,
      List<List<GuardRule>> steps,
      List<GuardRule> others,
      Optional<Event> last) {

    static State of(List<Event> events, Advice advice) {
      return new State(
          advice.decision(),
          advice.proposal().reasons().stream().map(Reason::rule).toList(),
          advice.steps().stream().map(step -> rules(step.verdicts().stream())).toList(),
          rules(
              Stream.of(advice.courseVerdicts(), advice.timeVerdicts(), advice.homeVerdicts())
                  .flatMap(List::stream)),
          events.isEmpty() ? Optional.empty() : Optional.of(events.getLast()));
    }

    private static List<GuardRule> rules(Stream<Verdict> verdicts) {
      return verdicts.map(Verdict::rule).toList();
    }
  }

  /** One history of a state. */
  private record Reached(List<Event> events, Advice advice) {}

  @ParameterizedTest
  @MethodSource("samples")
  void no_state_of_four_injections_leads_past_what_never_bends(NeverBends sample) {
    List<Set<State>> states = states(sample, INJECTIONS);

    assertThat(states).hasSize(INJECTIONS + 1).noneMatch(Set::isEmpty);
  }

  @ParameterizedTest
  @MethodSource("samples")
  void going_on_with_each_state_once_loses_none_of_those_of_every_history(NeverBends sample) {
    var every = new ArrayList<Set<State>>();
    for (int depth = 0; depth <= INJECTIONS_OF_A_FULL_WALK; depth++) {
      every.add(ConcurrentHashMap.newKeySet());
    }
    walk(sample, List.of(), INJECTIONS_OF_A_FULL_WALK, every);

    assertThat(states(sample, INJECTIONS_OF_A_FULL_WALK)).isEqualTo(every);
  }

  @ParameterizedTest
  @MethodSource("samples")
  @Tag("longest")
  void no_history_of_four_injections_leads_past_what_never_bends(NeverBends sample) {
    assertThat(walk(sample, List.of(), INJECTIONS, List.of())).isGreaterThan(LEAST);
  }

  /** The states after each number of injections; one history of each was gone on with. */
  private static List<Set<State>> states(NeverBends sample, int injections) {
    var found = new ArrayList<Set<State>>();
    Map<State, Reached> reached = new LinkedHashMap<>();
    reach(sample, List.of(), reached);
    found.add(Set.copyOf(reached.keySet()));
    for (int number = 1; number <= injections; number++) {
      Map<State, Reached> further = new LinkedHashMap<>();
      for (Reached one : reached.values()) {
        for (Event event : next(sample, one.advice())) {
          reach(sample, with(one.events(), event), further);
        }
      }
      reached = further;
      found.add(Set.copyOf(reached.keySet()));
    }
    return found;
  }

  private static void reach(NeverBends sample, List<Event> events, Map<State, Reached> reached) {
    Advice advice = checked(sample, events);
    reached.putIfAbsent(State.of(events, advice), new Reached(events, advice));
  }

  private static Advice checked(NeverBends sample, List<Event> events) {
    Advice advice = sample.advice(events);
    sample.check(events, advice);
    requireNoStepUpUnasked(events, advice);
    return advice;
  }

  /**
   * Checks a history and all that can follow it; gives back how many were checked.
   *
   * @param states where the states after each number of injections are noted; may be empty
   */
  private static long walk(
      NeverBends sample, List<Event> events, int injections, List<Set<State>> states) {
    Advice advice = checked(sample, events);
    states.stream().skip(events.size()).limit(1).forEach(of -> of.add(State.of(events, advice)));
    if (events.size() == injections) {
      return 1;
    }
    Stream<Event> next = next(sample, advice).stream();
    return 1
        + (events.size() < PARALLEL_DEPTH ? next.parallel() : next)
            .mapToLong(event -> walk(sample, with(events, event), injections, states))
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
