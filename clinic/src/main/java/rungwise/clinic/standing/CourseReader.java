package rungwise.clinic.standing;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseHistory;
import rungwise.clinic.course.Plan;
import rungwise.clinic.past.PastReading;
import rungwise.dosing.choice.Choice;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Reading;

/** Makes the engine's question of a course's record. Reading it twice gives the same question. */
public final class CourseReader {

  private final StandingPorts ports;

  public CourseReader(StandingPorts ports) {
    this.ports = ports;
  }

  /** The state of a course at an instant, by the population that is in use now. */
  public CourseState state(CourseFile file, Instant now) {
    return state(file, now, ports.populations().choiceFor(file.plan().preparation()));
  }

  /** The same, by another way to choose. */
  public CourseState state(CourseFile file, Instant now, Choice choice) {
    Plan plan = file.plan();
    Protocol protocol = protocol(plan);
    History history = history(file, protocol, now);
    LadderProposal proposal =
        file.signedDose()
            .map(written -> new LadderProposal(ladder(written.fact(), plan), List.of()))
            .orElseGet(() -> proposedOrAny(plan, file, history));
    var question =
        new Question(
            file.opened().group(),
            file.screening(),
            file.readiness(protocol.home(), ports.time().dayOf(now)),
            protocol,
            proposal.ladder(),
            history,
            vial(file, protocol, now),
            Circumstances.NONE,
            now);
    return new CourseState(file, question, choice, proposal.notes());
  }

  /**
   * The ladder that is proposed. Where a late report has left him no first dose, the steps of the
   * plan all the same, with the reasons: the guards forbid them.
   */
  private LadderProposal proposedOrAny(Plan plan, CourseFile file, History history) {
    Reading<LadderProposal> proposed = propose(plan, file, history);
    return proposed
        .found()
        .orElseGet(
            () ->
                new LadderProposal(
                    LadderProposal.whateverHeTolerated(
                            protocol(plan),
                            preparation(plan.preparation()),
                            Barrels.of(plan.barrel()).orElseThrow(),
                            file.opened().group())
                        .orThrow()
                        .ladder(),
                    proposed.faults()));
  }

  /** The ladder that a plan would give this man, or why it gives none. */
  public Reading<LadderProposal> ladderOf(Plan plan, CourseFile file) {
    return propose(plan, file, history(file, protocol(plan), ports.clock().instant()));
  }

  private History history(CourseFile file, Protocol protocol, Instant now) {
    var known = new Remembered<PreparationId, Preparation>(this::preparation);
    History own = new CourseHistory(file, stocks(file, protocol, known)::of, known).read();
    return PastReading.added(own, file, ports.past(), known, now);
  }

  private Stocks stocks(
      CourseFile file, Protocol protocol, Function<PreparationId, Preparation> known) {
    return new Stocks(file, file.vials(), protocol, ports.time().zone(), known);
  }

  /**
   * The ladder for this man's group. Where he begins a preparation whose first dose holds as much
   * as one that lasted two hours, it begins at the lowest start that the protocol has for anybody.
   */
  private Reading<LadderProposal> propose(Plan plan, CourseFile file, History history) {
    Preparation preparation = preparation(plan.preparation());
    Reading<LadderProposal> usual = ladderFor(plan, file.opened().group(), history);
    boolean isTooMuch =
        history.lastOf(preparation).isEmpty()
            && usual
                .found()
                .flatMap(one -> history.closing(preparation, one.ladder().first()))
                .isPresent();
    if (!isTooMuch) {
      return usual;
    }
    var lowest = ladderFor(plan, protocol(plan).groupWithLowestStart(), history);
    return lowest.found().isPresent() ? lowest : usual;
  }

  private Reading<LadderProposal> ladderFor(Plan plan, AetiologyGroup group, History history) {
    return LadderProposal.of(
        protocol(plan),
        preparation(plan.preparation()),
        Barrels.of(plan.barrel()).orElseThrow(),
        group,
        history.beginning(preparation(plan.preparation())));
  }

  /** The ladder that a plan would give a man without a record, or why it gives none. */
  public Reading<LadderProposal> ladderOf(Plan plan, AetiologyGroup group) {
    Barrel barrel = Barrels.of(plan.barrel()).orElseThrow();
    return LadderProposal.of(protocol(plan), preparation(plan.preparation()), barrel, group);
  }

  /** The protocol that a course runs on. */
  public Protocol protocolOf(CourseFile file) {
    return protocol(file.plan());
  }

  /** The preparation that a course runs with. */
  public Preparation preparationOf(CourseFile file) {
    return preparation(file.plan().preparation());
  }

  private Optional<VialInHand> vial(CourseFile file, Protocol protocol, Instant now) {
    Stocks stocks = stocks(file, protocol, this::preparation);
    return file.vial()
        .map(
            written ->
                new VialInHand(
                    stocks.of(written, now, file.plan().preparation()),
                    new VialInHand.Label(written.fact().vial().composition()),
                    written
                        .fact()
                        .vial()
                        .dates()
                        .lastDay()
                        .plusDays(1)
                        .atStartOfDay(ports.time().zone())
                        .toInstant()));
  }

  private Ladder ladder(DoseSigned signed, Plan plan) {
    return new Ladder(
        preparation(plan.preparation()),
        Barrels.of(plan.barrel()).orElseThrow(),
        signed.rungs(),
        signed.ceiling());
  }

  private Preparation preparation(PreparationId id) {
    return ports.preparations().apply(id).orElseThrow();
  }

  private Protocol protocol(Plan plan) {
    return ports.protocols().find(plan.protocol(), plan.protocolVersion()).orElseThrow().protocol();
  }
}
