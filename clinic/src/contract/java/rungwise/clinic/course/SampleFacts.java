package rungwise.clinic.course;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.coded.ShownBy;
import rungwise.clinic.course.CourseFact.AnswerOverturned;
import rungwise.clinic.course.CourseFact.BaselineRecorded;
import rungwise.clinic.course.CourseFact.CorrectionConfirmed;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.DecisionWritten;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.ExaminationRecorded;
import rungwise.clinic.course.CourseFact.HandedOver;
import rungwise.clinic.course.CourseFact.PastReviewed;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFact.ReportWithdrawn;
import rungwise.clinic.course.CourseFact.Screened;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.soundness.Acknowledgement.Side;
import rungwise.clinic.words.HomeSheet;
import rungwise.dosing.decision.DecisionValues;
import rungwise.dosing.decision.DecisionValues.Part;
import rungwise.dosing.decision.DecisionValues.Spoken;
import rungwise.dosing.decision.DecisionValues.Steps;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.OverriddenHold;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.Tablet;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.ErectileScore;
import rungwise.dosing.screening.Screening.Answered;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialDates;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Facts of every kind, with every choice that a fact may hold. */
public final class SampleFacts {

  public static final Instant NOW = Instant.parse("2026-03-02T09:00:00.123Z");
  public static final Patient PATIENT =
      new Patient("Øystein Sample", LocalDate.of(1961, 4, 30), "MR-0417");

  static final PreparationId PREPARATION = new PreparationId("alprostadil-20");

  private static final Plan PLAN = new Plan(PREPARATION, "u100-1", "label", 1);
  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);
  private static final String ODD_TEXT =
      "two lines\nof \"text\"; a back\\slash, 'quotes' and \u2265";

  private SampleFacts() {}

  /** A course's first fact. */
  public static CourseOpened opened(Patient patient) {
    return new CourseOpened(patient, AetiologyGroup.MIXED);
  }

  /**
   * Facts of every kind but the opening.
   *
   * @param earlier an entry that the course has already, for the facts that name one
   */
  public static List<CourseFact> later(EntryId earlier) {
    var facts = new ArrayList<CourseFact>();
    facts.addAll(screening());
    facts.add(new PlanChosen(PLAN));
    facts.addAll(vials());
    facts.addAll(readiness());
    facts.addAll(signatures());
    facts.addAll(SampleInjections.observations(earlier));
    facts.addAll(SampleInjections.reports(earlier));
    facts.add(new HandedOver(earlier, AccountId.of(new UUID(7, 7)), 1, NOW.minusSeconds(60)));
    facts.add(new HandedOver(earlier, AccountId.of(new UUID(7, 8)), 12, NOW));
    facts.addAll(SampleInjections.unfinished(earlier));
    facts.addAll(SampleCalls.all(earlier));
    facts.addAll(SampleRescues.all(earlier));
    facts.addAll(SampleReaching.all());
    facts.addAll(SampleLife.all());
    facts.addAll(SampleElsewhere.all());
    facts.addAll(SampleBefell.all(earlier));
    for (Tablet tablet : Tablet.values()) {
      facts.add(new CourseFact.TabletTaken(tablet, NOW.minusSeconds(3_600)));
    }
    facts.add(new CourseFact.DailyTabletDecided(/* isAllowed= */ true));
    facts.add(new CourseFact.DailyTabletDecided(/* isAllowed= */ false));
    for (HomeSheet sheet : SampleSheet.all()) {
      facts.add(new CourseFact.SheetMade(earlier, earlier, earlier, sheet));
    }
    facts.add(new CourseFact.FlagsSeen());
    facts.add(new ReportWithdrawn());
    facts.add(new VolumeReopened(PREPARATION, volume(250)));
    facts.add(new EmergencyReviewed(Optional.empty()));
    facts.add(new EmergencyReviewed(Optional.of(NOW)));
    facts.add(new CorrectionConfirmed(earlier));
    facts.add(new PastReviewed(Optional.empty()));
    facts.add(new PastReviewed(Optional.of(PREPARATION)));
    for (Side side : Side.values()) {
      facts.add(new CourseFact.FaultAcknowledged(12, "a".repeat(64), side));
    }
    return facts;
  }

  private static List<CourseFact> screening() {
    var facts = new ArrayList<CourseFact>();
    facts.add(new Screened(Map.of()));
    for (Answer answer : Answer.values()) {
      facts.add(screened(answer));
      facts.add(new ExaminationRecorded(DAY, answer));
      facts.add(
          new ExaminationRecorded(DAY, Optional.of(Instant.parse("2026-03-02T14:30:00Z")), answer));
    }
    for (Condition condition : Condition.values()) {
      facts.add(new DecisionWritten(condition));
      for (ShownBy shownBy : ShownBy.values()) {
        facts.add(new AnswerOverturned(condition, shownBy));
      }
    }
    for (Baseline.Ability ability : Baseline.Ability.values()) {
      for (Baseline.Injector injector : Baseline.Injector.values()) {
        facts.add(baseline(Optional.empty(), ability, Baseline.Ability.GOOD, injector));
        facts.add(baseline(ErectileScore.of(25), Baseline.Ability.LIMITED, ability, injector));
      }
    }
    return facts;
  }

  /** One answer to every question, each given a minute after the one before it. */
  static Screened screened(Answer answer) {
    var answers = new EnumMap<Condition, Answered>(Condition.class);
    for (Condition condition : Condition.values()) {
      answers.put(condition, new Answered(answer, NOW.minusSeconds(60L * answers.size())));
    }
    return new Screened(answers);
  }

  private static BaselineRecorded baseline(
      Optional<ErectileScore> score,
      Baseline.Ability hands,
      Baseline.Ability sight,
      Baseline.Injector injector) {
    return new BaselineRecorded(new Baseline(score, hands, sight, injector));
  }

  private static List<CourseFact> vials() {
    var bare = new VialDates(Optional.empty(), DAY, Optional.empty(), Optional.empty());
    var full =
        new VialDates(
            Optional.of(DAY.minusDays(40)),
            DAY.plusDays(40),
            Optional.of(new Opening(DAY.minusDays(1), Optional.of(LocalTime.of(9, 5)))),
            Optional.of(28));
    return List.of(
        new VialReceived(new Vial("L", "alprostadil 20 mcg per mL", bare, "")),
        new VialReceived(new Vial("L-1/\u00e9", "papaverine 30 mg per mL", full, "a 30 G needle")));
  }

  private static List<CourseFact> readiness() {
    var facts = new ArrayList<CourseFact>();
    for (Readiness item : Readiness.values()) {
      Optional<EmergencyPlan> plan =
          item == Readiness.EMERGENCY_PLAN
              ? Optional.of(
                  new EmergencyPlan(
                      "North Hospital",
                      "555 0100",
                      "his sister drives",
                      List.of(
                          new EmergencyPlan.Said("who stays", "his sister"),
                          new EmergencyPlan.Said("who has the key", ODD_TEXT.strip()))))
              : Optional.empty();
      facts.add(new ReadinessRecorded(item, DAY, plan, ""));
      facts.add(new ReadinessRecorded(item, DAY.minusDays(3), plan, ODD_TEXT));
    }
    return facts;
  }

  /** A signature that leaves out all that may be left out, and one for each thing it may hold. */
  private static List<CourseFact> signatures() {
    var facts = new ArrayList<CourseFact>();
    facts.add(signed(Place.CLINIC, Set.of(), Optional.empty(), Optional.empty()));
    facts.add(
        signed(
            Place.HOME,
            Set.of(
                new OverriddenHold(GuardRule.NO_VIAL, List.of(), Optional.empty()),
                new OverriddenHold(
                    GuardRule.HARD_TO_MEASURE,
                    List.of(Fact.said("worst case", ODD_TEXT), Fact.said("nothing", "")),
                    Optional.empty()),
                new OverriddenHold(
                    GuardRule.SCREENING_EXPIRED,
                    List.of(
                        new Fact.Happened("oldest answer", NOW),
                        new Fact.Which("vial", "one of two")),
                    Optional.of(NOW))),
            Optional.of(ChangeReason.OTHER),
            Optional.of(volume(1000))));
    for (ChangeReason reason : ChangeReason.values()) {
      facts.add(signed(Place.CLINIC, Set.of(), Optional.of(reason), Optional.empty()));
    }
    facts.add(
        signed(
            Place.HOME,
            Set.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(TimeSpan.ofMinutes(90))));
    return facts;
  }

  private static DoseSigned signed(
      Place place,
      Set<OverriddenHold> overridden,
      Optional<ChangeReason> changed,
      Optional<Volume> nextStep) {
    return signed(place, overridden, changed, nextStep, Optional.empty());
  }

  private static DoseSigned signed(
      Place place,
      Set<OverriddenHold> overridden,
      Optional<ChangeReason> changed,
      Optional<Volume> nextStep,
      Optional<TimeSpan> accepted) {
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
        new KeptAdvice(ODD_TEXT, nextStep.map(SampleFacts::values)),
        nextStep,
        accepted);
  }

  private static DecisionValues values(Volume step) {
    Instant none = NOW.plusMillis(1);
    return new DecisionValues(
        DecisionValues.Kind.STEP_UP,
        Optional.of(volume(250)),
        List.of(
            new Spoken(Part.REASON, "STEP_AFTER_PARTIAL", Optional.empty()),
            new Spoken(Part.STEP, "ABOVE_CEILING", Optional.of(new Steps(step, volume(1000)))),
            new Spoken(Part.NOW, "SPACING", Optional.empty())),
        Optional.of(none),
        "by rule and model " + ODD_TEXT,
        "label version 3",
        "6");
  }

  static Volume volume(long microlitres) {
    return Volume.ofMicrolitres(microlitres);
  }
}
