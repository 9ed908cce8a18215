package rungwise.clinic.protocols;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.Dosing;
import rungwise.dosing.choice.Choice;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.supply.Freshness;
import rungwise.dosing.supply.VialEnd;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * A made-up man walked through a protocol: he has no condition, a fresh vial, everything in place
 * for home, injects what is advised and waits long enough. It goes through the same engine as the
 * courses do.
 *
 * @param choice how each dose is chosen
 */
public record ProtocolCase(
    AetiologyGroup group, Preparation preparation, Barrel barrel, Choice choice) {

  private static final Instant BEGIN = Instant.parse("2026-01-05T12:00:00Z");

  /** Longer than any interval that a protocol may ask for. */
  private static final Duration APART = Duration.ofDays(31);

  private static final Stock FRESH = new Stock("made-up vial", Freshness.FRESH);

  /** What an injection of the advised dose was followed by, with nothing wrong about it. */
  public record Response(Grade grade, SoftAfter soft) {}

  /**
   * One advice of the walk.
   *
   * @param dose what is advised; empty where none is
   * @param advice "Increase", "Stop"...
   * @param reason the deciding rule
   */
  public record Advised(Optional<Dose> dose, String advice, String reason) {}

  /**
   * A walk.
   *
   * @param schedule the steps of the schedule
   * @param notes where a step was rounded, and why the schedule ends
   * @param advices before the first injection and after each response, until no dose is advised
   */
  public record Walk(List<Dose> schedule, List<String> notes, List<Advised> advices) {
    public Walk {
      schedule = List.copyOf(schedule);
      notes = List.copyOf(notes);
      advices = List.copyOf(advices);
    }
  }

  /** The walk, or why the protocol gives no schedule with this preparation and syringe. */
  public Reading<Walk> walk(Protocol protocol, List<Response> responses) {
    return LadderProposal.of(protocol, preparation, barrel, group)
        .map(proposal -> walk(protocol, proposal, responses));
  }

  private Walk walk(Protocol protocol, LadderProposal proposal, List<Response> responses) {
    Ladder ladder = proposal.ladder();
    var injections = new ArrayList<Injection>();
    var advices = new ArrayList<Advised>();
    Advice advice = advise(protocol, ladder, injections);
    advices.add(words(advice, ladder));
    for (Response response : responses) {
      Optional<Volume> proposed = advice.decision().proposed();
      if (proposed.isEmpty()) {
        break;
      }
      injections.add(injection(injections.size(), proposed.get(), response));
      advice = advise(protocol, ladder, injections);
      advices.add(words(advice, ladder));
    }
    return new Walk(ladder.rungs().stream().map(ladder::dose).toList(), proposal.notes(), advices);
  }

  private Injection injection(int before, Volume volume, Response response) {
    return new Injection(
        before + 1L,
        BEGIN.plus(APART.multipliedBy(before)),
        preparation,
        volume,
        Optional.of(volume),
        response.grade(),
        response.soft(),
        SimpleCauses.NONE_FOUND,
        Injection.Setting.CLINIC_OBSERVED,
        FRESH);
  }

  private Advice advise(Protocol protocol, Ladder ladder, List<Injection> injections) {
    Instant now = BEGIN.plus(APART.multipliedBy(injections.size()));
    return Dosing.advise(
        new Question(
            group,
            Screening.all(Answer.NO, now),
            Set.of(Readiness.values()),
            protocol,
            ladder,
            History.of(injections),
            Optional.of(
                new VialInHand(
                    FRESH,
                    new VialInHand.Label(preparation.composition()),
                    VialEnd.byLabel(now.plus(APART)))),
            Circumstances.NONE,
            now),
        choice);
  }

  private static Advised words(Advice advice, Ladder ladder) {
    return new Advised(
        advice.decision().proposed().map(ladder::dose),
        advice.decision().words(),
        advice.reason().rule().wording());
  }
}
