package rungwise.checks.histories;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.checks.histories.NeverBends.Event;
import rungwise.checks.histories.NeverBends.Lasting;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.quantities.Volume;

/** Every history of up to three injections, at every step whether it was advised or not. */
final class AllHistoriesTest {

  private static final List<Lasting> MANY =
      List.of(
          Lasting.exactly(20),
          Lasting.exactly(60),
          Lasting.exactly(61),
          Lasting.exactly(119),
          Lasting.exactly(120),
          Lasting.exactly(239),
          Lasting.exactly(240),
          Lasting.atLeast(15),
          Lasting.between(0, 60),
          Lasting.between(30, 61),
          Lasting.between(60, 121),
          Lasting.between(120, 241),
          Lasting.notKnown());

  private static final List<Lasting> FEW =
      List.of(
          Lasting.exactly(45),
          Lasting.exactly(75),
          Lasting.exactly(130),
          Lasting.exactly(250),
          Lasting.notKnown());

  private final NeverBends label = NeverBends.samples().getFirst();

  private List<Event> events(List<Lasting> durations, Set<Grade> grades, Set<SimpleCauses> causes) {
    var events = new ArrayList<Event>();
    for (Volume rung : label.ladder().rungs()) {
      for (Grade grade : grades) {
        for (Lasting lasting : durations) {
          for (SimpleCauses cause : causes) {
            events.add(new Event(rung, grade, lasting, cause));
          }
        }
      }
    }
    return events;
  }

  private void check(List<Event> events) {
    label.check(events, label.advice(events));
  }

  @Test
  void every_history_of_up_to_two_injections_keeps_what_never_bends() {
    List<Event> events =
        events(MANY, EnumSet.allOf(Grade.class), EnumSet.of(SimpleCauses.NONE_FOUND));
    check(List.of());
    for (Event first : events) {
      check(List.of(first));
      for (Event second : events) {
        check(List.of(first, second));
      }
    }
    assertThat(events).hasSize(5 * 5 * 13);
  }

  @Test
  @Tag("long")
  void every_history_of_three_injections_keeps_what_never_bends() {
    List<Event> events =
        events(
            FEW,
            EnumSet.of(Grade.NONE, Grade.FIRM_NOT_USABLE, Grade.USABLE),
            EnumSet.of(SimpleCauses.NONE_FOUND));
    events.parallelStream()
        .forEach(
            first -> {
              for (Event second : events) {
                for (Event third : events) {
                  check(List.of(first, second, third));
                }
              }
            });
    assertThat(events).hasSize(5 * 3 * 5);
  }

  @Test
  void a_poor_response_never_leads_higher_before_the_simple_causes_are_answered() {
    List<Event> events =
        events(
            MANY,
            EnumSet.allOf(Grade.class),
            EnumSet.of(SimpleCauses.NOT_ASKED, SimpleCauses.ONE_FOUND));
    for (Event event : events) {
      check(List.of(event));
      assertThat(label.advice(List.of(event)).decision()).isNotInstanceOf(Decision.StepUp.class);
    }
  }
}
