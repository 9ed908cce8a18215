package rungwise.store;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.audit.Viewed;
import rungwise.clinic.course.ChangeReason;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.protocols.ProtocolShelf;
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

/** A course of an invented man that has every kind of fact, a signed protocol, and a view. */
public final class SampleCourse {

  private static final CourseId COURSE = new CourseId(new UUID(3, 1).toString());
  private static final PreparationId PREPARATION = new PreparationId("alprostadil-20");
  private static final Plan PLAN = new Plan(PREPARATION, "u100-0.5", "sample", 1);
  private static final Volume LOW = Volume.ofMicrolitres(100);
  private static final Volume HIGH = Volume.ofMicrolitres(200);

  private SampleCourse() {}

  public static void append(SqliteStore store) {
    SampleEntries.run(
        store,
        () -> {
          for (CourseFact fact : facts()) {
            store.courses().append(NewEntry.of(COURSE, fact, AccountId.PROGRAM, SampleEntries.NOW));
          }
          store
              .protocolShelf()
              .append(
                  new ProtocolShelf.Signed(
                      "sample", 1, "two\nlines", AccountId.PROGRAM, SampleEntries.NOW));
          store
              .audit()
              .append(
                  new Viewed(
                      AccountId.PROGRAM,
                      SampleEntries.NOW,
                      Screen.COURSE,
                      Viewed.Outcome.SHOWN,
                      List.of(COURSE)));
        });
  }

  private static List<CourseFact> facts() {
    return List.of(
        new CourseFact.CourseOpened(
            new Patient("Sample Man", LocalDate.of(1961, 4, 30), "S-1"), AetiologyGroup.UNKNOWN),
        new CourseFact.ScreeningAnswered(Answer.NO),
        new CourseFact.PlanChosen(PLAN),
        new CourseFact.ReadinessRecorded(Readiness.TEACH_BACK),
        new CourseFact.DoseSigned(
            PLAN,
            LOW,
            Place.HOME,
            List.of(LOW, HIGH),
            HIGH,
            Set.of(GuardRule.HOME_NOT_READY),
            Optional.of(ChangeReason.MORE_CAUTION),
            4,
            SampleEntries.NOW,
            "advice\nin two lines"),
        new CourseFact.InjectionReported(
            SampleEntries.NOW,
            PREPARATION,
            "u100-0.5",
            LOW,
            LOW,
            Grade.USABLE,
            new SoftAfter.Between(TimeSpan.ofMinutes(30), TimeSpan.ofMinutes(60)),
            SimpleCauses.NONE_FOUND),
        new CourseFact.VolumeReopened(PREPARATION, LOW));
  }
}
