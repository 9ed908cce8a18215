package rungwise.checks.histories;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.Protocol;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Screening;
import rungwise.files.ProtocolFile;
import rungwise.files.SampleProtocols;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Every history of up to four injections under each sample protocol. At each point the prescriber
 * signs the proposed dose, the lowest allowed or the highest allowed one; where nothing is allowed,
 * the man injects the lowest step all the same. The limits are stated here again in plain minutes
 * and steps, so that the engine does not check itself.
 */
final class FourInjectionsTest {

  private static final Instant START = Instant.parse("2026-03-02T20:00:00Z");
  private static final int INJECTIONS = 4;
  private static final long LEAST = 1_000_000;
  private static final int HOUR = 60;
  private static final int TWO_HOURS = 120;
  private static final int FOUR_HOURS = 240;
  private static final int WITHOUT_LIMIT = Integer.MAX_VALUE;
  private static final int NOT_KNOWN = -1;

  /** A duration with the most minutes that it can mean, as a person would say. */
  private record Lasting(SoftAfter soft, int most) {}

  private static final List<Lasting> DURATIONS =
      List.of(
          new Lasting(exactly(60), 60),
          new Lasting(exactly(61), 61),
          new Lasting(exactly(120), 120),
          new Lasting(between(30, 121), 120),
          new Lasting(new SoftAfter.NotKnown(), NOT_KNOWN),
          new Lasting(exactly(240), 240),
          new Lasting(new SoftAfter.AtLeast(TimeSpan.ofMinutes(20)), WITHOUT_LIMIT));

  private static final List<Grade> GRADES = List.of(Grade.values());

  private record Event(Volume volume, Grade grade, Lasting lasting, SimpleCauses causes) {}

  /** A protocol with a preparation and a syringe that it can be run with. */
  record Sample(Protocol protocol, Ladder ladder) {
    @Override
    public String toString() {
      return protocol.title();
    }
  }

  private static SoftAfter exactly(long minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  private static SoftAfter between(long from, long before) {
    return new SoftAfter.Between(TimeSpan.ofMinutes(from), TimeSpan.ofMinutes(before));
  }

  static List<Sample> samples() {
    return SampleProtocols.documents().stream()
        .map(document -> ProtocolFile.read(document).orThrow())
        .map(FourInjectionsTest::sample)
        .toList();
  }

  private static Sample sample(Protocol protocol) {
    boolean isAlone = protocol.isFor(SamplePreparations.ALPROSTADIL_20);
    Preparation preparation =
        isAlone ? SamplePreparations.ALPROSTADIL_20 : SamplePreparations.THREE_DRUG;
    Barrel barrel = isAlone ? Barrels.U100_1 : Barrels.U100_0_5;
    Ladder ladder =
        LadderProposal.of(protocol, preparation, barrel, AetiologyGroup.VASCULOGENIC)
            .orThrow()
            .ladder();
    return new Sample(protocol, ladder);
  }

  @ParameterizedTest
  @MethodSource("samples")
  @Tag("long")
  void no_history_of_four_injections_leads_past_what_never_bends(Sample sample) {
    long checked = walk(sample, List.of());

    assertThat(checked).isGreaterThan(LEAST);
  }

  /** Checks a history and all that can follow it; gives back how many were checked. */
  private static long walk(Sample sample, List<Event> events) {
    Advice advice = Dosing.advise(question(sample, events));
    check(sample, events, advice);
    if (events.size() == INJECTIONS) {
      return 1;
    }
    Stream<Event> next = next(sample, advice).stream();
    return 1
        + (events.isEmpty() ? next.parallel() : next)
            .mapToLong(event -> walk(sample, with(events, event)))
            .sum();
  }

  private static List<Event> with(List<Event> events, Event event) {
    var longer = new ArrayList<>(events);
    longer.add(event);
    return longer;
  }

  private static List<Event> next(Sample sample, Advice advice) {
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
    for (Grade grade : GRADES) {
      for (Lasting lasting : DURATIONS) {
        next.add(new Event(volume, grade, lasting, SimpleCauses.NONE_FOUND));
      }
      if (!grade.isUseful()) {
        next.add(new Event(volume, grade, DURATIONS.getFirst(), SimpleCauses.NOT_ASKED));
      }
    }
  }

  private static Question question(Sample sample, List<Event> events) {
    var injections = new ArrayList<Injection>();
    for (Event event : events) {
      injections.add(
          new Injection(
              injections.size() + 1L,
              START.plus(Duration.ofDays(3L * injections.size())),
              sample.ladder().preparation().id(),
              event.volume(),
              event.volume(),
              event.grade(),
              event.lasting().soft(),
              event.causes(),
              Place.CLINIC,
              Stock.NOT_RECORDED));
    }
    return new Question(
        AetiologyGroup.VASCULOGENIC,
        SCREENED,
        Set.of(Readiness.values()),
        sample.protocol(),
        sample.ladder(),
        Optional.empty(),
        History.of(injections),
        Optional.empty(),
        START.plus(Duration.ofDays(30)));
  }

  private static final Screening SCREENED = Screening.all(Answer.NO, START);

  private static void check(Sample sample, List<Event> events, Advice advice) {
    for (Volume rung : sample.ladder().rungs()) {
      if (isForbidden(sample.ladder(), events, rung)
          && (advice.isAllowed(rung) || advice.decision().proposed().equals(Optional.of(rung)))) {
        throw new AssertionError(rung + " must be forbidden after " + events + ": " + advice);
      }
    }
    Optional<Volume> proposed = advice.decision().proposed();
    boolean isOnALine = proposed.isEmpty() || sample.ladder().barrel().hasMarkAt(proposed.get());
    boolean isWithin = proposed.isEmpty() || !proposed.get().isMoreThan(sample.ladder().ceiling());
    boolean raisesUnasked =
        advice.decision() instanceof Decision.StepUp
            && (events.getLast().causes() != SimpleCauses.NONE_FOUND
                || events.getLast().grade().isUseful());
    if (!isOnALine || !isWithin || raisesUnasked) {
      throw new AssertionError("after " + events + ": " + advice);
    }
  }

  /** What never bends, in plain words, minutes and steps. */
  private static boolean isForbidden(Ladder ladder, List<Event> events, Volume volume) {
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
    boolean isUnknown = last.lasting().most() == NOT_KNOWN && last.grade() != Grade.NONE;
    if ((last.lasting().most() > HOUR || isUnknown) && volume.compareTo(last.volume()) > 0) {
      return true;
    }
    int at = ladder.rungs().indexOf(last.volume());
    return ladder.rungs().indexOf(volume) > at + 1;
  }
}
