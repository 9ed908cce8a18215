package rungwise.clinic.titration;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.Plan;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.Protocol;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.quantities.Reading;

/** Makes the engine's question of a course's record. Reading it twice gives the same question. */
public final class CourseReader {

  private final TitrationPorts ports;

  public CourseReader(TitrationPorts ports) {
    this.ports = ports;
  }

  /** The state of a course at an instant. */
  public CourseState state(CourseFile file, Instant now) {
    Plan plan = file.plan();
    Preparation preparation = preparation(plan);
    Protocol protocol = protocol(plan);
    Barrel barrel = Barrels.of(plan.barrel()).orElseThrow();
    Optional<Ladder> signed =
        file.signedDose().map(written -> ladder(written.fact(), preparation, barrel));
    if (signed.isPresent()) {
      return new CourseState(file, question(file, protocol, signed.get(), now), List.of());
    }
    LadderProposal proposal =
        LadderProposal.of(protocol, preparation, barrel, file.opened().group()).orThrow();
    return new CourseState(
        file, question(file, protocol, proposal.ladder(), now), proposal.notes());
  }

  /** The ladder that a plan would give, or why it gives none. */
  public Reading<LadderProposal> ladderOf(Plan plan, AetiologyGroup group) {
    Barrel barrel = Barrels.of(plan.barrel()).orElseThrow();
    return LadderProposal.of(protocol(plan), preparation(plan), barrel, group);
  }

  private static Question question(CourseFile file, Protocol protocol, Ladder ladder, Instant now) {
    return new Question(
        file.opened().group(),
        file.contraindication(),
        file.readiness(),
        protocol,
        ladder,
        file.history(),
        now);
  }

  private static Ladder ladder(DoseSigned signed, Preparation preparation, Barrel barrel) {
    return new Ladder(preparation, barrel, signed.rungs(), signed.ceiling());
  }

  private Preparation preparation(Plan plan) {
    return ports.preparations().apply(plan.preparation()).orElseThrow();
  }

  private Protocol protocol(Plan plan) {
    return ports.protocols().find(plan.protocol(), plan.protocolVersion()).orElseThrow().protocol();
  }
}
