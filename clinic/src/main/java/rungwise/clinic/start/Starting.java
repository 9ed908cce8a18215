package rungwise.clinic.start;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rungwise.clinic.IdSource;
import rungwise.clinic.OutsideText;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Reading;

/** The use case that opens a course. */
public final class Starting {

  private final StandingPorts ports;
  private final CourseReader reader;
  private final Predicate<PreparationId> inUse;
  private final IdSource ids;

  /**
   * The use case over these ports.
   *
   * @param inUse whether a version of a preparation may be planned now
   */
  public Starting(StandingPorts ports, Predicate<PreparationId> inUse, IdSource ids) {
    this.ports = ports;
    this.inUse = inUse;
    this.reader = new CourseReader(ports);
    this.ids = ids;
  }

  /** Opens a course, or gives every fault of the form at once. */
  public Reading<CourseId> open(Account actor, CourseDraft draft) {
    if (!actor.may(Role.PRESCRIBER) && !actor.may(Role.NURSE_EDUCATOR)) {
      return Reading.refused("Only a prescriber or a nurse educator can open a course.");
    }
    return ports.transactions().inTransaction(() -> openNow(actor, draft));
  }

  private Reading<CourseId> openNow(Account actor, CourseDraft draft) {
    var faults = new ArrayList<String>();
    Reading<Patient> who =
        ManReading.of(
            draft.fullName(),
            draft.birthDate(),
            draft.recordNumber(),
            ports.today(),
            ports.clockCheck().belief().isKnown());
    faults.addAll(who.faults());
    Optional<Patient> patient = who.found();
    Optional<AetiologyGroup> group = AetiologyGroup.of(draft.group());
    if (group.isEmpty()) {
      faults.add("Choose the group: it decides the first dose. Not known is an answer.");
    }
    Optional<Plan> plan = plan(draft, faults);
    if (plan.isPresent() && group.isPresent()) {
      faults.addAll(reader.ladderOf(plan.get(), group.get()).faults());
    }
    patient
        .filter(one -> !draft.namesakeConfirmed() && !ports.courses().alike(one).isEmpty())
        .ifPresent(
            one ->
                faults.add(
                    "Another course is for a man of a record number like his, or of that birth date"
                        + " and a name like his: look at it first, then confirm that this is"
                        + " somebody else."));
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    CourseId id = new CourseId(ids.next().toString());
    for (CourseFact fact :
        List.of(
            new CourseOpened(patient.orElseThrow(), group.orElseThrow()),
            new PlanChosen(plan.orElseThrow()))) {
      ports.courses().append(NewEntry.of(id, fact, actor.id(), ports.clock().instant()));
    }
    return new Reading.Read<>(id, notices(patient.orElseThrow()));
  }

  /** A letter of another script in a name may be one that only looks like his. */
  private static List<String> notices(Patient patient) {
    boolean isMixed =
        OutsideText.mixesScripts(patient.fullName())
            || OutsideText.mixesScripts(patient.recordNumber());
    return isMixed
        ? List.of(
            "His name or his record number mixes letters of two scripts, some of which look alike:"
                + " compare it with his papers, and search for him under the usual letters.")
        : List.of();
  }

  private Optional<Plan> plan(CourseDraft draft, List<String> faults) {
    boolean hasPreparation =
        !draft.preparation().isBlank() && inUse.test(new PreparationId(draft.preparation()));
    if (!hasPreparation) {
      faults.add("Choose the preparation from the clinic's list.");
    }
    if (Barrels.of(draft.barrel()).isEmpty()) {
      faults.add("Choose the syringe from the clinic's list.");
    }
    var protocol =
        ports.protocols().holdingOn(ports.today()).stream()
            .filter(signed -> signed.protocol().key().equals(draft.protocol()))
            .findFirst();
    if (protocol.isEmpty()) {
      faults.add("Choose a protocol that the clinic has signed.");
    }
    if (!hasPreparation || Barrels.of(draft.barrel()).isEmpty() || protocol.isEmpty()) {
      return Optional.empty();
    }
    var found = protocol.get().protocol();
    return Optional.of(
        new Plan(
            new PreparationId(draft.preparation()), draft.barrel(), found.name(), found.version()));
  }
}
