package rungwise.store;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.audit.Viewed;
import rungwise.clinic.befell.VialWord;
import rungwise.clinic.callbook.CallProtocol;
import rungwise.clinic.callbook.Department;
import rungwise.clinic.coded.AfterEnd;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.coded.EndReason;
import rungwise.clinic.coded.ShownBy;
import rungwise.clinic.coded.ToldBy;
import rungwise.clinic.coded.VialsLeft;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.course.Cause;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.Moment;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
import rungwise.clinic.course.SampleSheet;
import rungwise.clinic.course.Vial;
import rungwise.clinic.elsewhere.ElsewhereWord;
import rungwise.clinic.life.LifeWord;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.populations.PopulationShelf;
import rungwise.clinic.protocols.ProtocolShelf;
import rungwise.clinic.reach.ReachWord;
import rungwise.clinic.rescue.RescueWord;
import rungwise.clinic.soundness.Acknowledgement.Side;
import rungwise.dosing.decision.DecisionValues;
import rungwise.dosing.decision.DecisionValues.Part;
import rungwise.dosing.decision.DecisionValues.Spoken;
import rungwise.dosing.decision.DecisionValues.Steps;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.OverriddenHold;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Spot;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.Tablet;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.ErectileScore;
import rungwise.dosing.screening.Screening.Answered;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialDates;
import rungwise.dosing.urgent.rescue.LogVerdict;
import rungwise.quantities.Mass;
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
          facts().forEach(fact -> append(store, fact));
          EntryId vial = lastEntry(store);
          append(store, started(vial));
          EntryId observation = lastEntry(store);
          append(
              store,
              new CourseFact.ObservationNoted(
                  observation,
                  Moment.USABLE,
                  SampleEntries.NOW,
                  Optional.of(Grade.USABLE),
                  Optional.of(new Vitals(128, 76, 72))));
          append(store, reported(observation, vial));
          EntryId report = lastEntry(store);
          append(store, new CourseFact.VolumeReopened(PREPARATION, LOW));
          lifted(report).forEach(fact -> append(store, fact));
          store.roomDays().close(LocalDate.of(2026, 3, 2), AccountId.PROGRAM, SampleEntries.NOW);
          store.signedWords().sign(1, AccountId.PROGRAM, SampleEntries.NOW);
          appendProtocol(store);
          appendForCalls(store);
          appendPopulations(store);
          store
              .pastHistories()
              .append(new UUID(4, 1).toString(), "history.csv", past(), SampleEntries.NOW);
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

  private static CourseFact joined() {
    return new CourseFact.ElsewhereWritten(
        new ElsewhereWord.Joined("11111111-1111-4111-8111-111111111111", /* leads= */ true));
  }

  private static CourseFact told() {
    return new CourseFact.ElsewhereWritten(
        new ElsewhereWord.Told(
            PREPARATION,
            HIGH,
            Optional.of("u100-1"),
            "the sample clinic",
            Optional.of(LocalDate.of(2026, 3, 1)),
            Grade.USABLE,
            new SoftAfter.NotKnown(),
            ToldBy.LETTER));
  }

  /** What stops until somebody acts, and what a prescriber lifts. */
  private static List<CourseFact> lifted(EntryId report) {
    return List.of(
        new CourseFact.HandedOver(report, AccountId.PROGRAM, 2, SampleEntries.NOW),
        new CourseFact.ReportUnfinished(
            Optional.of(SampleEntries.NOW),
            Optional.of(report),
            List.of(new CourseFact.ReportUnfinished.Said("soft", "within_60"))),
        new CourseFact.CallWritten(
            new CourseFact.CallWritten.HandedTo(
                report, "Sample Hospital", "the doctor there", SampleEntries.NOW)),
        rescued(report),
        new CourseFact.ReachWritten(
            new ReachWord.NotReached("07700 900123", SampleEntries.NOW.plusSeconds(600))),
        new CourseFact.LifeWritten(
            new LifeWord.Ended(
                EndReason.OTHER_TREATMENT,
                Optional.of(LocalDate.of(2026, 3, 2)),
                VialsLeft.RETURNED,
                AfterEnd.IMPLANT,
                "the sample clinic for implants")),
        new CourseFact.LifeWritten(new LifeWord.Reopened()),
        new CourseFact.VialBefell(
            report,
            new VialWord.Warm(
                LocalDate.of(2026, 3, 2), Optional.of(25), Optional.of(2), Optional.of(5))),
        joined(),
        told(),
        new CourseFact.SheetMade(report, report, report, SampleSheet.spanish()),
        new CourseFact.FlagsSeen(),
        new CourseFact.TabletTaken(Tablet.SILDENAFIL, SampleEntries.NOW),
        new CourseFact.DailyTabletDecided(/* isAllowed= */ true),
        new CourseFact.CorrectionConfirmed(report),
        new CourseFact.EmergencyReviewed(Optional.of(SampleEntries.NOW)),
        new CourseFact.PastReviewed(Optional.of(PREPARATION)),
        new CourseFact.FaultAcknowledged(1, "0".repeat(64), Side.KEEPER));
  }

  private static CourseFact rescued(EntryId call) {
    return new CourseFact.RescueWritten(
        call,
        new RescueWord.Prepared(
            SampleEntries.NOW,
            Mass.ofPicograms(200_000_000),
            Optional.of("a second reader"),
            List.of(LogVerdict.Kind.OVER_LIMIT)));
  }

  private static void appendForCalls(SqliteStore store) {
    store.callBook().sign(CallProtocol.SAMPLE, AccountId.PROGRAM, SampleEntries.NOW);
    store
        .callBook()
        .keep(
            new Department("Sample Hospital", "Sampletown", "555 0100", "urology", "ask for it"),
            Optional.empty(),
            AccountId.PROGRAM,
            SampleEntries.NOW);
    store.callBook().print(store.callBook().edition(), AccountId.PROGRAM, SampleEntries.NOW);
  }

  private static void appendProtocol(SqliteStore store) {
    store
        .protocolShelf()
        .append(
            new ProtocolShelf.Signed(
                "sample",
                1,
                "two\nlines",
                List.of("ceiling: 80 mcg"),
                AccountId.PROGRAM,
                SampleEntries.NOW));
  }

  private static void appendPopulations(SqliteStore store) {
    store
        .populationShelf()
        .append(
            new PopulationShelf.Signed(
                "sample",
                1,
                "{\n}",
                List.of(PREPARATION, new PreparationId("another")),
                AccountId.PROGRAM,
                SampleEntries.NOW));
    store
        .populationShelf()
        .withdraw(
            "sample",
            1,
            new PopulationShelf.Withdrawn(
                AccountId.PROGRAM, SampleEntries.NOW, "made from too few men"));
  }

  private static void append(SqliteStore store, CourseFact fact) {
    store.courses().append(NewEntry.of(COURSE, fact, AccountId.PROGRAM, SampleEntries.NOW));
  }

  private static EntryId lastEntry(SqliteStore store) {
    return store.courses().find(COURSE).orElseThrow().entries().getLast().id();
  }

  private static EmergencyPlan emergencyPlan() {
    return new EmergencyPlan(
        "hospital",
        "555 0100",
        "a taxi",
        List.of(new EmergencyPlan.Said("who stays", "his sister")));
  }

  private static List<CourseFact> facts() {
    return List.of(
        new CourseFact.CourseOpened(
            new Patient("Sample Man", LocalDate.of(1961, 4, 30), "S-1"), AetiologyGroup.UNKNOWN),
        new CourseFact.Screened(
            Map.of(
                Condition.VENOUS_LEAK, new Answered(Answer.YES, SampleEntries.NOW),
                Condition.TRAZODONE, new Answered(Answer.NO, SampleEntries.NOW))),
        new CourseFact.PlanChosen(PLAN),
        new CourseFact.ReadinessRecorded(
            Readiness.EMERGENCY_PLAN,
            LocalDate.of(2026, 3, 1),
            Optional.of(emergencyPlan()),
            "agreed"),
        new CourseFact.DoseSigned(
            PLAN,
            LOW,
            Place.HOME,
            List.of(LOW, HIGH),
            HIGH,
            Set.of(overridden()),
            Optional.of(ChangeReason.MORE_CAUTION),
            4,
            SampleEntries.NOW,
            new KeptAdvice("advice\nin two lines", Optional.of(values())),
            Optional.of(HIGH),
            Optional.of(TimeSpan.ofMinutes(90))),
        new CourseFact.DecisionWritten(Condition.VENOUS_LEAK),
        new CourseFact.AnswerOverturned(Condition.VENOUS_LEAK, ShownBy.TEST),
        new CourseFact.BaselineRecorded(
            new Baseline(
                ErectileScore.of(9),
                Baseline.Ability.GOOD,
                Baseline.Ability.LIMITED,
                Baseline.Injector.HIMSELF)),
        new CourseFact.ExaminationRecorded(LocalDate.of(2026, 3, 1), Answer.NO),
        vial());
  }

  private static DecisionValues values() {
    return new DecisionValues(
        DecisionValues.Kind.REPEAT,
        Optional.of(LOW),
        List.of(
            new Spoken(Part.REASON, "SETTLED", Optional.empty()),
            new Spoken(Part.STEP, "REACHES_LONG", Optional.of(new Steps(LOW, HIGH)))),
        Optional.of(SampleEntries.NOW),
        "by rule",
        "sample 1",
        "5");
  }

  private static OverriddenHold overridden() {
    return new OverriddenHold(
        GuardRule.NEW_STOCK,
        List.of(
            new Fact.Which("vial", "the second"),
            Fact.said("asked for", LOW),
            new Fact.Happened("made", SampleEntries.NOW)),
        Optional.of(SampleEntries.NOW));
  }

  private static CourseFact vial() {
    return new CourseFact.VialReceived(
        new Vial(
            "lot",
            "alprostadil 20 mcg per mL",
            new VialDates(
                Optional.of(LocalDate.of(2026, 2, 1)),
                LocalDate.of(2026, 5, 1),
                Optional.of(new Opening(LocalDate.of(2026, 2, 2), Optional.of(LocalTime.of(8, 0)))),
                Optional.of(28)),
            "syringe"));
  }

  private static PastHistory past() {
    return new PastHistory(
        "S-2",
        "vasculogenic",
        List.of(
            new PastInjection(
                2,
                1,
                LOW,
                0.95,
                Optional.empty(),
                Grade.USABLE,
                new SoftAfter.Between(TimeSpan.ofMinutes(30), TimeSpan.ofMinutes(60)),
                Optional.of(new PastInjection.Setting(SampleEntries.NOW, PREPARATION, "u100-0.5"))),
            new PastInjection(
                3,
                2,
                LOW,
                1,
                Optional.of(1.0),
                Grade.NONE,
                new SoftAfter.NotKnown(),
                Optional.empty(),
                Optional.of(PREPARATION))));
  }

  private static CourseFact started(EntryId vial) {
    return new CourseFact.ObservationStarted(
        SampleEntries.NOW,
        PREPARATION,
        "u100-0.5",
        LOW,
        Optional.of(LOW),
        Optional.of(new Spot(Spot.Side.HIS_LEFT, 2)),
        Optional.of(new Vitals(130, 80, 70)),
        Optional.of(vial));
  }

  private static CourseFact reported(EntryId observation, EntryId vial) {
    return new CourseFact.InjectionReported(
        SampleEntries.NOW,
        PREPARATION,
        "u100-0.5",
        LOW,
        Optional.empty(),
        Grade.USABLE,
        new SoftAfter.Between(TimeSpan.ofMinutes(30), TimeSpan.ofMinutes(60)),
        SimpleCauses.ONE_FOUND,
        Place.CLINIC,
        Optional.of(observation),
        new InjectionDetails(
            Optional.of(TimeSpan.ofMinutes(8)),
            Optional.of(TimeSpan.ofMinutes(30)),
            Optional.of(new Spot(Spot.Side.HIS_LEFT, 2)),
            Optional.of(3),
            Answer.NO,
            Answer.YES,
            Set.of(Cause.LEAK, Cause.BUBBLE),
            Optional.of(vial),
            "none",
            Answer.NO));
  }
}
