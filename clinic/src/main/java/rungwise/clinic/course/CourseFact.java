package rungwise.clinic.course;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Answer;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Volume;

/** Something that was written into a course. Each kind is appended and never changed. */
public sealed interface CourseFact {

  /** The course begins. */
  record CourseOpened(Patient patient, AetiologyGroup group) implements CourseFact {}

  /** The contraindications were asked about. */
  record ScreeningAnswered(Answer contraindication) implements CourseFact {}

  /** Preparation, syringe and protocol were chosen. */
  record PlanChosen(Plan plan) implements CourseFact {}

  /** Something that home use needs is on record. */
  record ReadinessRecorded(Readiness item) implements CourseFact {}

  /**
   * A prescriber signed a dose.
   *
   * @param rungs the ladder that is signed with it
   * @param overridden the holds that were overridden
   * @param changed why it is not the proposed dose, where it is not
   * @param basis the number of the last entry that the advice had read
   * @param askedAt the instant at which the advice was asked
   * @param advice the whole advice, so that it can be replayed and compared
   */
  record DoseSigned(
      Plan plan,
      Volume volume,
      Place place,
      List<Volume> rungs,
      Volume ceiling,
      Set<GuardRule> overridden,
      Optional<ChangeReason> changed,
      long basis,
      Instant askedAt,
      String advice)
      implements CourseFact {
    public DoseSigned {
      rungs = List.copyOf(rungs);
      overridden = Set.copyOf(overridden);
    }
  }

  /** An injection that happened, and how it went. */
  record InjectionReported(
      Instant injectedAt,
      PreparationId preparation,
      String barrel,
      Volume drawn,
      Volume ordered,
      Grade grade,
      SoftAfter soft,
      SimpleCauses causes)
      implements CourseFact {}

  /** The report that this entry corrects does not belong here. */
  record ReportWithdrawn() implements CourseFact {}

  /** A prescriber allows volumes again that a long erection had closed. */
  record VolumeReopened(PreparationId preparation, Volume upTo) implements CourseFact {}

  /** A prescriber reviewed what was, or might have been, an emergency. */
  record EmergencyReviewed() implements CourseFact {}
}
