package rungwise.checks.histories;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.guard.SignedDose;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.supply.Freshness;
import rungwise.dosing.supply.VialEnd;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.files.ProtocolFile;
import rungwise.files.SampleProtocols;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * What never bends, in plain words, minutes and steps: only printed lines, never above the ceiling,
 * never more than one step up, and the limits of 1, 2 and 4 hours. It is stated here again, so that
 * the engine does not check itself.
 */
record NeverBends(Protocol protocol, Ladder ladder) {

  static final int WITHOUT_LIMIT = Integer.MAX_VALUE;
  static final int NOT_KNOWN = -1;

  private static final int HOUR = 60;
  private static final int TWO_HOURS = 120;
  private static final int FOUR_HOURS = 240;
  private static final Instant START = Instant.parse("2026-03-02T20:00:00Z");
  private static final Duration APART = Duration.ofDays(3);
  private static final Duration LATER = Duration.ofDays(30);
  private static final Screening SCREENED = Screening.all(Answer.NO, START);
  private static final Stock FRESH = new Stock("vial", Freshness.FRESH);

  /** A duration with the most minutes that it can mean, as a person would say. */
  record Lasting(SoftAfter soft, int most) {

    static Lasting exactly(int minutes) {
      return new Lasting(new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes)), minutes);
    }

    static Lasting atLeast(int minutes) {
      return new Lasting(new SoftAfter.AtLeast(TimeSpan.ofMinutes(minutes)), WITHOUT_LIMIT);
    }

    /** The second minute is left out, so the most is one less. */
    static Lasting between(int from, int before) {
      return new Lasting(
          new SoftAfter.Between(TimeSpan.ofMinutes(from), TimeSpan.ofMinutes(before)), before - 1);
    }

    static Lasting notKnown() {
      return new Lasting(new SoftAfter.NotKnown(), NOT_KNOWN);
    }
  }

  /** An injection of a step, drawn as ordered. */
  record Event(Volume volume, Grade grade, Lasting lasting, SimpleCauses causes) {}

  /** Each sample protocol with a preparation and a syringe that it can be run with. */
  static List<NeverBends> samples() {
    return SampleProtocols.documents().stream()
        .map(document -> ProtocolFile.read(document).orThrow())
        .map(NeverBends::of)
        .toList();
  }

  private static NeverBends of(Protocol protocol) {
    boolean isAlone = protocol.isFor(SamplePreparations.ALPROSTADIL_20);
    Preparation preparation =
        isAlone ? SamplePreparations.ALPROSTADIL_20 : SamplePreparations.THREE_DRUG;
    Barrel barrel = isAlone ? Barrels.U100_1 : Barrels.U100_0_5;
    Ladder ladder =
        LadderProposal.of(protocol, preparation, barrel, AetiologyGroup.VASCULOGENIC)
            .orThrow()
            .ladder();
    return new NeverBends(protocol, ladder);
  }

  @Override
  public String toString() {
    return protocol.title();
  }

  /** The advice after these injections, three days apart, a month after the first. */
  Advice advice(List<Event> events) {
    return Dosing.advise(question(events));
  }

  private Question question(List<Event> events) {
    var injections = new ArrayList<Injection>();
    for (Event event : events) {
      injections.add(
          new Injection(
              injections.size() + 1L,
              START.plus(APART.multipliedBy(injections.size())),
              ladder.preparation(),
              event.volume(),
              Optional.of(event.volume()),
              event.grade(),
              event.lasting().soft(),
              event.causes(),
              Injection.Setting.CLINIC_OBSERVED,
              FRESH));
    }
    var vial =
        new VialInHand(
            FRESH,
            new VialInHand.Label(ladder.preparation().composition()),
            VialEnd.byLabel(START.plus(LATER.multipliedBy(2))));
    return new Question(
        AetiologyGroup.VASCULOGENIC,
        SCREENED,
        Set.of(Readiness.values()),
        protocol,
        ladder,
        History.of(injections),
        Optional.of(vial),
        Circumstances.NONE,
        START.plus(LATER));
  }

  /**
   * Fails if the advice proposes, allows or clears anything that must be forbidden.
   *
   * @throws AssertionError with the whole history
   */
  void check(List<Event> events, Advice advice) {
    Question question = question(events);
    for (Volume rung : ladder.rungs()) {
      boolean isOpen =
          advice.isAllowed(rung)
              || advice.decision().proposed().equals(Optional.of(rung))
              || mayInject(question, rung);
      if (isOpen && isForbidden(events, rung)) {
        throw new AssertionError(rung + " must be forbidden after " + events + ": " + advice);
      }
    }
    Optional<Volume> proposed = advice.decision().proposed();
    boolean isDrawable =
        proposed
            .filter(
                volume -> !ladder.barrel().hasMarkAt(volume) || volume.isMoreThan(ladder.ceiling()))
            .isEmpty();
    if (!isDrawable) {
      throw new AssertionError(proposed + " cannot be drawn, after " + events);
    }
  }

  private static boolean mayInject(Question question, Volume volume) {
    var signed = new SignedDose(volume, Place.HOME, Set.of(), Optional.empty());
    return Dosing.mayInject(question, Optional.of(signed)).isClear();
  }

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
    boolean isUnknown = last.lasting().most() == NOT_KNOWN && last.grade() != Grade.NONE;
    if ((last.lasting().most() > HOUR || isUnknown) && volume.compareTo(last.volume()) > 0) {
      return true;
    }
    int at = ladder.rungs().indexOf(last.volume());
    return ladder.rungs().indexOf(volume) > at + 1;
  }
}
