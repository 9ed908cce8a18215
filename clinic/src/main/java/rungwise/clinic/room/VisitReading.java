package rungwise.clinic.room;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.clock.Present;
import rungwise.clinic.course.Cause;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.Moment;
import rungwise.clinic.course.Plan;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.standing.LabelledDose;
import rungwise.clinic.titration.DrawnMark;
import rungwise.clinic.titration.FormChoices;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Spot;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Reads the forms of an injection in the clinic; all faults at once. */
final class VisitReading {

  private static final TimeSpan LONGEST_STAY = TimeSpan.ofHours(72);

  private final ClinicTime time;
  private final Present told;
  private final List<Fault> faults = new ArrayList<>();
  private final List<String> notices = new ArrayList<>();

  VisitReading(ClinicTime time, Present told) {
    this.time = time;
    this.told = told;
  }

  /**
   * An observation that ended.
   *
   * @param at when he was soft, or last seen
   * @param after vital signs at that time
   */
  record Ended(InjectionReported report, boolean isSoft, Instant at, Optional<Vitals> after) {}

  Reading<ObservationStarted> start(
      StartDraft draft, CourseFile file, Optional<EntryId> vial, LabelledDose dose) {
    Plan plan = file.plan();
    Optional<Instant> at = instant(draft.date(), draft.time(), draft.occurrence());
    Optional<Volume> drawn =
        take(
            VisitFields.MARK,
            DrawnMark.read(draft.mark(), Barrels.of(plan.barrel()).orElseThrow()));
    Optional<Spot> spot =
        take(VisitFields.SIDE, FormChoices.spot(draft.side(), draft.hour()))
            .orElse(Optional.empty());
    var vitals =
        take(VisitFields.SYSTOLIC, Vitals.read(draft.systolic(), draft.diastolic(), draft.pulse()));
    if (vitals.filter(Optional::isEmpty).isPresent()) {
      notices.add("No blood pressure and pulse before the injection were written down.");
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    Volume volume = drawn.orElseThrow();
    dose.notice(volume).ifPresent(notices::add);
    return new Reading.Read<>(
        new ObservationStarted(
            at.orElseThrow(),
            dose.kept(),
            plan.barrel(),
            volume,
            file.signedDose()
                .filter(signed -> dose.isAsPlanned())
                .map(signed -> signed.fact().volume()),
            spot,
            vitals.orElseThrow(),
            vial),
        notices);
  }

  Reading<ObservationNoted> note(NoteDraft draft, EntryId observation, Instant injectedAt) {
    Optional<Instant> at = instant(draft.date(), draft.time(), draft.occurrence());
    within(at, injectedAt);
    Optional<Moment> moment =
        Arrays.stream(Moment.values())
            .filter(one -> one.name().equals(draft.moment()))
            .filter(one -> one != Moment.FULLY_SOFT)
            .findFirst();
    if (moment.isEmpty()) {
      faults.add(
          new Fault(
              VisitFields.MOMENT,
              "Choose what was seen. That he is soft again ends the observation."));
    }
    Optional<Grade> grade =
        draft.grade().isBlank()
            ? Optional.empty()
            : take(VisitFields.GRADE, FormChoices.grade(draft.grade()));
    var vitals =
        take(VisitFields.SYSTOLIC, Vitals.read(draft.systolic(), draft.diastolic(), draft.pulse()));
    return faults.isEmpty()
        ? Reading.of(
            new ObservationNoted(
                observation, moment.orElseThrow(), at.orElseThrow(), grade, vitals.orElseThrow()))
        : new Reading.Refused<>(faults);
  }

  Reading<Ended> end(
      EndDraft draft, CourseFile.Written<ObservationStarted> started, CourseFile file) {
    Instant injectedAt = started.fact().injectedAt();
    Optional<Instant> at = instant(draft.date(), draft.time(), draft.occurrence());
    within(at, injectedAt);
    Optional<Grade> grade = take(VisitFields.GRADE, FormChoices.grade(draft.grade()));
    Set<Cause> wrong = FormChoices.wrong(draft.whatWentWrong());
    Optional<SimpleCauses> causes =
        take(VisitFields.CAUSES, FormChoices.causes(draft.causes(), wrong));
    Optional<Integer> pain =
        take(VisitFields.PAIN, FormChoices.pain(draft.pain())).orElse(Optional.empty());
    var vitals =
        take(VisitFields.SYSTOLIC, Vitals.read(draft.systolic(), draft.diastolic(), draft.pulse()));
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    TimeSpan lasted = TimeSpan.between(injectedAt, at.orElseThrow());
    if (draft.left()) {
      notices.add("He left before he was soft: call him, and correct the report when it ended.");
    }
    var report =
        new InjectionReported(
            injectedAt,
            started.fact().preparation(),
            started.fact().barrel(),
            started.fact().drawn(),
            started.fact().ordered(),
            grade.orElseThrow(),
            draft.left() ? new SoftAfter.AtLeast(lasted) : new SoftAfter.Exactly(lasted),
            causes.orElseThrow(),
            Place.CLINIC,
            Optional.of(started.entry().id()),
            details(started, file, pain, wrong, at.orElseThrow()));
    return new Reading.Read<>(
        new Ended(report, !draft.left(), at.orElseThrow(), vitals.orElseThrow()), notices);
  }

  /** Onset and usable time follow from what was seen. */
  private static InjectionDetails details(
      CourseFile.Written<ObservationStarted> started,
      CourseFile file,
      Optional<Integer> pain,
      Set<Cause> wrong,
      Instant end) {
    Instant injectedAt = started.fact().injectedAt();
    Optional<Instant> firm = first(file, started.entry().id(), Moment.FIRST_FIRM);
    Optional<Instant> usable = first(file, started.entry().id(), Moment.USABLE);
    return new InjectionDetails(
        firm.map(at -> TimeSpan.between(injectedAt, at)),
        usable.filter(at -> !at.isAfter(end)).map(at -> TimeSpan.between(at, end)),
        started.fact().spot(),
        pain,
        Answer.NOT_KNOWN,
        Answer.NOT_KNOWN,
        wrong,
        started.fact().vial(),
        "",
        Answer.NOT_KNOWN);
  }

  private static Optional<Instant> first(CourseFile file, EntryId observation, Moment moment) {
    return file.notesOf(observation).stream()
        .map(CourseFile.Written::fact)
        .filter(noted -> noted.moment() == moment)
        .map(ObservationNoted::at)
        .findFirst();
  }

  private <T> Optional<T> take(String field, Reading<T> reading) {
    faults.addAll(reading.at(field).placed());
    notices.addAll(reading.notices());
    return reading.found();
  }

  private Optional<Instant> instant(String date, String clock, Occurrence occurrence) {
    Optional<Instant> at = take(ClinicTime.TIME_FIELD, time.read(date, clock, occurrence));
    at.filter(told::isStillToCome)
        .ifPresent(
            instant ->
                faults.add(
                    ofTime(time.words(instant) + " is still to come: check the date and time.")));
    return at;
  }

  private void within(Optional<Instant> at, Instant injectedAt) {
    at.filter(instant -> instant.isBefore(injectedAt))
        .ifPresent(
            instant ->
                faults.add(
                    ofTime(
                        time.words(instant)
                            + " is before the injection of "
                            + time.words(injectedAt)
                            + ": check the time.")));
    at.filter(instant -> LONGEST_STAY.after(injectedAt).isBefore(instant))
        .ifPresent(
            instant ->
                faults.add(
                    ofTime(
                        time.words(instant)
                            + " is more than "
                            + LONGEST_STAY
                            + " after the injection: check the date.")));
  }

  private static Fault ofTime(String text) {
    return new Fault(ClinicTime.TIME_FIELD, text);
  }
}
