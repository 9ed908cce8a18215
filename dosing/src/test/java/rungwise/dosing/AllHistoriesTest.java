package rungwise.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.SignedDose;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Screening;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Every history of up to three injections, at every step whether advised or not, against what never
 * bends: only printed lines, never above the ceiling, never more than one step up, and the limits
 * of 1, 2 and 4 hours. The limits are stated here again in plain minutes, so that the engine does
 * not check itself.
 */
final class AllHistoriesTest {

  private static final int HOUR = 60;
  private static final int TWO_HOURS = 120;
  private static final int FOUR_HOURS = 240;
  private static final int WITHOUT_LIMIT = Integer.MAX_VALUE;
  private static final int NOT_KNOWN = -1;

  /** A duration with the most minutes that it can mean, as a person would say. */
  private record Lasting(SoftAfter soft, int most) {}

  private static final List<Lasting> MANY =
      List.of(
          new Lasting(minutes(20), 20),
          new Lasting(minutes(60), 60),
          new Lasting(minutes(61), 61),
          new Lasting(minutes(119), 119),
          new Lasting(minutes(120), 120),
          new Lasting(minutes(239), 239),
          new Lasting(minutes(240), 240),
          new Lasting(new SoftAfter.AtLeast(TimeSpan.ofMinutes(15)), WITHOUT_LIMIT),
          new Lasting(between(0, 60), 59),
          new Lasting(between(30, 61), 60),
          new Lasting(between(60, 121), 120),
          new Lasting(between(120, 241), 240),
          new Lasting(new SoftAfter.NotKnown(), NOT_KNOWN));

  private static final List<Lasting> FEW =
      List.of(
          new Lasting(minutes(45), 45),
          new Lasting(minutes(75), 75),
          new Lasting(minutes(130), 130),
          new Lasting(minutes(250), 250),
          new Lasting(new SoftAfter.NotKnown(), NOT_KNOWN));

  private record Event(Volume volume, Grade grade, Lasting lasting, SimpleCauses causes) {}

  private final Ladder ladder = new LabelWorld().ladder();

  private static SoftAfter between(long from, long before) {
    return new SoftAfter.Between(TimeSpan.ofMinutes(from), TimeSpan.ofMinutes(before));
  }

  private List<Event> events(List<Lasting> durations, Set<Grade> grades, Set<SimpleCauses> causes) {
    var events = new ArrayList<Event>();
    for (Volume rung : ladder.rungs()) {
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
    for (Event first : events) {
      for (Event second : events) {
        for (Event third : events) {
          check(List.of(first, second, third));
        }
      }
    }
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
      Advice advice = Dosing.advise(question(List.of(event)));
      assertThat(advice.decision()).isNotInstanceOf(Decision.StepUp.class);
    }
  }

  private Question question(List<Event> events) {
    var injections = new ArrayList<Injection>();
    for (Event event : events) {
      injections.add(
          new Injection(
              injections.size() + 1L,
              START.plus(Duration.ofDays(3L * injections.size())),
              ladder.preparation().id(),
              event.volume(),
              event.volume(),
              event.grade(),
              event.lasting().soft(),
              event.causes(),
              Place.CLINIC,
              LabelWorld.FRESH));
    }
    return new Question(
        AetiologyGroup.VASCULOGENIC,
        Screening.all(Answer.NO, START),
        EnumSet.allOf(Readiness.class),
        LabelWorld.protocol(),
        ladder,
        Optional.empty(),
        History.of(injections),
        Optional.of(LabelWorld.vial(LabelWorld.FRESH, LabelWorld.ALPROSTADIL_20_LABEL)),
        START.plus(Duration.ofDays(30)));
  }

  private void check(List<Event> events) {
    Question question = question(events);
    Advice advice = Dosing.advise(question);
    for (Volume rung : ladder.rungs()) {
      if (isForbidden(events, rung)) {
        boolean proposed = advice.decision().proposed().equals(Optional.of(rung));
        boolean allowed = advice.isAllowed(rung);
        boolean clear =
            Dosing.mayInject(
                    question,
                    Optional.of(new SignedDose(rung, Place.HOME, Set.of(), Optional.empty())))
                .isClear();
        if (proposed || allowed || clear) {
          throw new AssertionError(rung + " must be forbidden after " + events + ": " + advice);
        }
      }
    }
    Optional<Volume> proposed = advice.decision().proposed();
    if (proposed.isPresent() && !ladder.barrel().hasMarkAt(proposed.get())) {
      throw new AssertionError(proposed + " is on no line, after " + events);
    }
  }

  /** Design rules, in plain words and minutes. */
  private boolean isForbidden(List<Event> events, Volume volume) {
    for (Event event : events) {
      int most = event.lasting().most();
      if (most >= FOUR_HOURS) {
        return true;
      }
      if (most >= TWO_HOURS && volume.compareTo(event.volume()) >= 0) {
        return true;
      }
    }
    if (events.isEmpty()) {
      return volume.compareTo(ladder.first()) > 0;
    }
    Event last = events.getLast();
    boolean unknown = last.lasting().most() == NOT_KNOWN && last.grade() != Grade.NONE;
    if ((last.lasting().most() > HOUR || unknown) && volume.compareTo(last.volume()) > 0) {
      return true;
    }
    int at = ladder.rungs().indexOf(last.volume());
    return ladder.rungs().indexOf(volume) > at + 1;
  }
}
