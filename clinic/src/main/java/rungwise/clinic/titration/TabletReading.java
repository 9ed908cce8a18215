package rungwise.clinic.titration;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.ClockText;
import rungwise.clinic.clock.Present;
import rungwise.clinic.course.CourseFact.TabletTaken;
import rungwise.dosing.known.Tablet;

/**
 * Reads which tablet for erections he took, and when.
 *
 * @param told when it is told
 */
record TabletReading(ClinicTime time, Present told) {

  /** What a form says where nobody asked. */
  static final String NOT_ASKED = "";

  /** What a form says where he took none. */
  static final String NONE = "none";

  /**
   * The tablet of a report. Without a date it was taken on the day of the injection, and without a
   * time as late as it may have been: at the injection.
   */
  Optional<TabletTaken> of(ReportDraft draft, Optional<Instant> injected, PartFaults faults) {
    return of(draft, injected, time.dayOf(injected.orElse(told.now())), faults);
  }

  /** The tablet of a form without an injection: today, and now where no time is said. */
  Optional<TabletTaken> of(ReportDraft draft, PartFaults faults) {
    return of(draft, Optional.of(told.now()), time.dayOf(told.now()), faults);
  }

  private Optional<TabletTaken> of(
      ReportDraft draft, Optional<Instant> latest, LocalDate day, PartFaults faults) {
    String which = draft.text(ReportPart.TABLET);
    boolean isTimed = draft.has(ReportPart.TABLET_DATE) || draft.has(ReportPart.TABLET_TIME);
    if (which.equals(NOT_ASKED) || which.equals(NONE)) {
      if (isTimed) {
        faults.add(
            ReportPart.TABLET,
            "When he took a tablet is written, and not which: choose it, or empty date and time.");
      }
      return Optional.empty();
    }
    Optional<Tablet> tablet =
        Arrays.stream(Tablet.values()).filter(one -> one.name().equals(which)).findFirst();
    if (tablet.isEmpty()) {
      faults.add(ReportPart.TABLET, "There is no such tablet: choose one of the list.");
    }
    Optional<Instant> at = isTimed ? at(draft, day, faults) : latest;
    return at.flatMap(taken -> tablet.map(one -> new TabletTaken(one, taken)));
  }

  private Optional<Instant> at(ReportDraft draft, LocalDate day, PartFaults faults) {
    Optional<LocalDate> date =
        draft.has(ReportPart.TABLET_DATE)
            ? faults.take(
                ReportPart.TABLET_DATE, ClinicTime.readDate(draft.text(ReportPart.TABLET_DATE)))
            : Optional.of(day);
    Optional<LocalTime> clock =
        faults.take(ReportPart.TABLET_TIME, ClockText.read(draft.text(ReportPart.TABLET_TIME)));
    if (date.isEmpty() || clock.isEmpty()) {
      return Optional.empty();
    }
    // Of a time that came twice the later one holds longer.
    Optional<Instant> at =
        faults.take(
            ReportPart.TABLET_TIME,
            time.read(
                date.get(),
                clock.get(),
                time.comesTwice(date.get().toString(), clock.get().toString())
                    ? Occurrence.SECOND
                    : Occurrence.NOT_SAID));
    at.filter(told::isStillToCome)
        .ifPresent(
            taken ->
                faults.add(
                    ReportPart.TABLET_TIME,
                    time.words(taken) + " is still to come: check when he took the tablet."));
    return at.filter(taken -> !told.isStillToCome(taken));
  }
}
