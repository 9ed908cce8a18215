package rungwise.clinic.course;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFact.ReportWithdrawn;
import rungwise.clinic.course.CourseFact.ScreeningAnswered;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Answer;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Facts of every kind, with every choice that a fact may hold. */
public final class SampleFacts {

  public static final Instant NOW = Instant.parse("2026-03-02T09:00:00.123Z");
  public static final Patient PATIENT =
      new Patient("Øystein Sample", LocalDate.of(1961, 4, 30), "MR-0417");

  private static final PreparationId PREPARATION = new PreparationId("alprostadil-20");
  private static final Plan PLAN = new Plan(PREPARATION, "u100-1", "label", 1);

  private SampleFacts() {}

  /** A course's first fact. */
  public static CourseOpened opened(Patient patient) {
    return new CourseOpened(patient, AetiologyGroup.MIXED);
  }

  /** Facts of every kind but the opening. */
  public static List<CourseFact> later() {
    var facts = new ArrayList<CourseFact>();
    for (Answer answer : Answer.values()) {
      facts.add(new ScreeningAnswered(answer));
    }
    facts.add(new PlanChosen(PLAN));
    for (Readiness item : Readiness.values()) {
      facts.add(new ReadinessRecorded(item));
    }
    facts.addAll(signatures());
    for (SoftAfter soft : durations()) {
      facts.add(report(soft, Grade.USABLE, SimpleCauses.NOT_ASKED));
    }
    for (Grade grade : Grade.values()) {
      for (SimpleCauses causes : SimpleCauses.values()) {
        facts.add(report(new SoftAfter.NotKnown(), grade, causes));
      }
    }
    facts.add(new ReportWithdrawn());
    facts.add(new VolumeReopened(PREPARATION, volume(250)));
    facts.add(new EmergencyReviewed());
    return facts;
  }

  /** Every way in which the end of an erection is known. */
  public static List<SoftAfter> durations() {
    return List.of(
        new SoftAfter.Exactly(TimeSpan.ofMinutes(45)),
        new SoftAfter.Exactly(new TimeSpan(2_730_001)),
        new SoftAfter.AtLeast(TimeSpan.ofHours(5)),
        new SoftAfter.Between(TimeSpan.ofMinutes(0), TimeSpan.ofMinutes(30)),
        new SoftAfter.Between(TimeSpan.ofMinutes(60), TimeSpan.ofMinutes(121)),
        new SoftAfter.NotKnown());
  }

  /** A signature that leaves out all that may be left out, and one for each thing it may hold. */
  private static List<CourseFact> signatures() {
    var facts = new ArrayList<CourseFact>();
    facts.add(signed(Place.CLINIC, Set.of(), Optional.empty(), "decision: start"));
    facts.add(
        signed(
            Place.HOME,
            EnumSet.of(GuardRule.HARD_TO_MEASURE, GuardRule.SPACING),
            Optional.of(ChangeReason.OTHER),
            "two lines\nof \"advice\"; a back\\slash, 'quotes' and \u2265"));
    for (ChangeReason reason : ChangeReason.values()) {
      facts.add(signed(Place.CLINIC, Set.of(), Optional.of(reason), "x"));
    }
    return facts;
  }

  private static DoseSigned signed(
      Place place, Set<GuardRule> overridden, Optional<ChangeReason> changed, String advice) {
    return new DoseSigned(
        PLAN,
        volume(250),
        place,
        List.of(volume(120), volume(250), volume(1000)),
        volume(1000),
        overridden,
        changed,
        3,
        NOW,
        advice);
  }

  private static InjectionReported report(SoftAfter soft, Grade grade, SimpleCauses causes) {
    return new InjectionReported(
        NOW.minusSeconds(86_400),
        PREPARATION,
        "u100-1",
        volume(125),
        volume(250),
        grade,
        soft,
        causes);
  }

  private static Volume volume(long microlitres) {
    return Volume.ofMicrolitres(microlitres);
  }
}
