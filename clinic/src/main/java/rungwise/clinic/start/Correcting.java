package rungwise.clinic.start;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Patient;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * A prescriber corrects who a man is: another opening of the same course, which takes the place of
 * the one before it. Both stay, and he is found by both.
 */
public final class Correcting {

  private static final String SAME = "That is what stands on record already: nothing was changed.";
  private static final String ALIKE =
      "Another course is for a man of that record number, or of that name and birth date: look at"
          + " it first, then confirm that this is somebody else.";

  private final StandingPorts ports;
  private final CourseChanges changes;

  public Correcting(StandingPorts ports) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
  }

  /**
   * Writes down who he is. Where the group is another one, the signed dose ends.
   *
   * @param basis the number of the last entry that was shown
   */
  public Reading<Long> correct(Account actor, CourseId id, long basis, ManDraft draft) {
    return changes.changeSeen(actor, id, basis, (file, now) -> correct(actor, file, draft, now));
  }

  private Reading<Long> correct(Account actor, CourseFile file, ManDraft draft, Instant now) {
    Written<CourseOpened> old = file.inForce(CourseOpened.class).getLast();
    Reading<Patient> who =
        ManReading.of(
            draft.fullName(),
            draft.birthDate(),
            draft.recordNumber(),
            ports.today(),
            ports.clockCheck().belief().isKnown());
    Optional<AetiologyGroup> group = AetiologyGroup.of(draft.group());
    List<Fault> faults = new ArrayList<>(who.placed());
    if (group.isEmpty()) {
      faults.add(
          new Fault(
              ManDraft.GROUP,
              "Choose the group: it decides the first dose. Not known is an answer."));
    }
    who.found().ifPresent(man -> faults.addAll(faultsOf(man, file, draft)));
    if (draft.reason().isBlank()) {
      faults.add(new Fault(CourseChanges.REASON, CourseChanges.REASON_MISSING));
    }
    CourseChanges.textFault(draft.reason(), CourseChanges.REASON).ifPresent(faults::add);
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    var opened = new CourseOpened(who.orThrow(), group.orElseThrow());
    return opened.equals(old.fact())
        ? Reading.refused(SAME)
        : changes.appendWithReason(
            file.id(), opened, actor, now, Optional.of(old.entry().id()), draft.reason());
  }

  private List<Fault> faultsOf(Patient man, CourseFile file, ManDraft draft) {
    var faults = new ArrayList<Fault>();
    boolean isAlike =
        ports.courses().alike(man).stream().anyMatch(other -> !other.equals(file.id()));
    if (isAlike && !draft.namesakeConfirmed()) {
      faults.add(new Fault(ManDraft.NAMESAKE, ALIKE));
    }
    String before = file.patient().recordKey();
    boolean hasPast = !ports.past().of(before).isEmpty() || !ports.past().undone(before).isEmpty();
    if (hasPast && !before.equals(man.recordKey())) {
      faults.add(
          new Fault(
              ManDraft.RECORD_NUMBER,
              "A history from before this record stands under "
                  + file.patient().recordNumber()
                  + " and must go on counting for him: the number stays as it is."));
    }
    return faults;
  }
}
