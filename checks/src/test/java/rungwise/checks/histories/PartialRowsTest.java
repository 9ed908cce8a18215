package rungwise.checks.histories;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.checks.histories.NeverBends.Event;
import rungwise.checks.histories.NeverBends.Lasting;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Source;
import rungwise.quantities.Volume;

/**
 * A protocol that waits for more than one partial response only ever holds: over every history of
 * up to three injections at the first steps, against the same protocol that waits for one.
 */
final class PartialRowsTest {

  private static final int MOST = 3;
  private static final int INJECTIONS = 3;
  private static final int STEPS = 2;
  private static final Lasting SHORT = Lasting.exactly(20);
  private static final Lasting LONG = Lasting.exactly(75);
  private static final Set<Grade> GRADES =
      EnumSet.of(Grade.NONE, Grade.FULLER, Grade.FIRM_NOT_USABLE, Grade.USABLE);

  static List<NeverBends> samples() {
    return NeverBends.samples();
  }

  private static NeverBends waitingFor(int responses, NeverBends sample) {
    var after = new Protocol.AfterPartial(responses, new Source.Assumption("for a test"));
    Protocol protocol = sample.protocol();
    return new NeverBends(
        protocol.with(protocol.more().withAfterPartial(Optional.of(after))), sample.ladder());
  }

  private static List<Event> events(NeverBends sample) {
    var events = new ArrayList<Event>();
    for (Volume rung : sample.ladder().rungs().subList(0, STEPS)) {
      for (Grade grade : GRADES) {
        events.add(new Event(rung, grade, SHORT, SimpleCauses.NONE_FOUND));
      }
      events.add(new Event(rung, Grade.FIRM_NOT_USABLE, LONG, SimpleCauses.NONE_FOUND));
      events.add(new Event(rung, Grade.FIRM_NOT_USABLE, SHORT, SimpleCauses.NOT_ASKED));
    }
    return events;
  }

  @ParameterizedTest
  @MethodSource("samples")
  void waiting_for_more_partial_responses_never_proposes_more_nor_bends_anything(
      NeverBends sample) {
    List<NeverBends> patient = List.of(waitingFor(2, sample), waitingFor(MOST, sample));

    assertThat(held(sample, patient, events(sample), List.of())).isPositive();
  }

  /** Checks a history and all that can follow it; gives back how often the dose was held. */
  private static long held(
      NeverBends sample, List<NeverBends> patient, List<Event> all, List<Event> events) {
    Advice once = sample.advice(events);
    long held = patient.stream().filter(one -> isHeld(sample, one, events, once)).count();
    if (events.size() < INJECTIONS) {
      for (Event event : all) {
        var longer = new ArrayList<>(events);
        longer.add(event);
        held += held(sample, patient, all, longer);
      }
    }
    return held;
  }

  /** Whether waiting changes the decision; it may do so in one way only. */
  private static boolean isHeld(
      NeverBends sample, NeverBends patient, List<Event> events, Advice once) {
    Advice waiting = patient.advice(events);
    if (waiting.decision().equals(once.decision())) {
      return false;
    }
    patient.check(events, waiting);
    if (!isOneStepLess(sample, events, once, waiting)) {
      throw new AssertionError("after " + events + ": " + once + " became " + waiting);
    }
    return true;
  }

  /** The dose of a partial response again, instead of the step above it. */
  private static boolean isOneStepLess(
      NeverBends sample, List<Event> events, Advice once, Advice waiting) {
    Event last = events.getLast();
    return last.grade() == Grade.FIRM_NOT_USABLE
        && last.causes() == SimpleCauses.NONE_FOUND
        && waiting.proposal().reasons().getFirst().rule() == TitrationRule.PARTIAL_AGAIN
        && waiting.decision().equals(new Decision.Repeat(last.volume()))
        && once.decision().proposed().equals(sample.ladder().above(last.volume()));
  }

  @ParameterizedTest
  @MethodSource("samples")
  void whoever_follows_the_advice_reaches_the_last_step_after_so_many_at_each(NeverBends sample) {
    for (int responses = 1; responses <= MOST; responses++) {
      NeverBends patient = waitingFor(responses, sample);
      List<Volume> expected = new ArrayList<>();
      for (Volume rung : sample.ladder().rungs()) {
        boolean isLast = rung.equals(sample.ladder().last());
        for (int again = 0; again < (isLast ? 1 : responses); again++) {
          expected.add(rung);
        }
      }

      assertThat(followed(patient)).isEqualTo(expected);
    }
  }

  private static List<Volume> followed(NeverBends patient) {
    var events = new ArrayList<Event>();
    Optional<Volume> proposed = patient.advice(events).decision().proposed();
    while (proposed.isPresent() && events.size() < patient.ladder().rungs().size() * MOST) {
      events.add(new Event(proposed.get(), Grade.FIRM_NOT_USABLE, SHORT, SimpleCauses.NONE_FOUND));
      proposed = patient.advice(events).decision().proposed();
    }
    return events.stream().map(Event::volume).toList();
  }
}
