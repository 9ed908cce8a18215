package rungwise.clinic.sheet;

import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.befell.VialWords;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.Plan;
import rungwise.clinic.course.Vial;
import rungwise.clinic.elsewhere.ElsewhereWords;
import rungwise.clinic.reaching.ReachWords;
import rungwise.clinic.rescuing.RescueWords;
import rungwise.clinic.words.HomeSheet;
import rungwise.dosing.guard.OverriddenHold;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialLimit;

/** What an entry of the record says, in a line. */
public final class EntryWords {

  private EntryWords() {}

  public static String of(CourseFact fact, ClinicTime time) {
    return switch (fact) {
      case CourseFact.CourseOpened opened -> ManLines.of(opened);
      case CourseFact.Screened screened -> "Screening: " + screeningWords(screened);
      case CourseFact.DecisionWritten decision ->
          "Prescriber goes on with: " + decision.condition().words();
      case CourseFact.AnswerOverturned overturned -> words(overturned);
      case CourseFact.BaselineRecorded baseline -> "Baseline: " + words(baseline.baseline());
      case CourseFact.ExaminationRecorded exam -> words(exam, time);
      case CourseFact.VialReceived received ->
          (received.ofClinic().isEmpty() ? "Vial: " : "Vial of the clinic: ")
              + words(received.vial());
      case CourseFact.ObservationStarted started -> words(started, time);
      case CourseFact.ObservationNoted noted -> words(noted, time);
      case CourseFact.PlanChosen chosen -> words(chosen.plan());
      case CourseFact.ReadinessRecorded ready -> words(ready);
      case CourseFact.DoseSigned signed -> words(signed, time);
      case CourseFact.InjectionReported report -> words(report, time);
      case CourseFact.HandedOver handed -> words(handed, time);
      case CourseFact.ReportUnfinished unfinished -> words(unfinished, time);
      case CourseFact.TabletTaken taken -> words(taken, time);
      case CourseFact.DailyTabletDecided decided -> words(decided);
      case CourseFact.CallWritten written -> CallWords.of(written.word(), time);
      case CourseFact.RescueWritten rescue -> RescueWords.of(rescue.word(), time);
      case CourseFact.ReachWritten reach -> ReachWords.of(reach.word(), time);
      case CourseFact.LifeWritten life -> LifeWords.of(life.word());
      case CourseFact.VialBefell befell -> VialWords.of(befell.word());
      case CourseFact.ElsewhereWritten transfer -> ElsewhereWords.of(transfer.word());
      case CourseFact.SheetMade made -> words(made.sheet());
      case CourseFact.FlagsSeen seen -> "Flagged reports seen by a prescriber";
      case CourseFact.ReportWithdrawn withdrawn -> "Report withdrawn";
      case CourseFact.VolumeReopened reopened -> "Reopened up to " + reopened.upTo();
      case CourseFact.EmergencyReviewed reviewed -> words(reviewed, time);
      case CourseFact.CorrectionConfirmed confirmed ->
          "Prescriber confirms that the report before the correction was wrong";
      case CourseFact.PastReviewed reviewed -> words(reviewed);
      case CourseFact.FaultAcknowledged acknowledged -> words(acknowledged);
    };
  }

  private static String words(HomeSheet sheet) {
    return "Sheet for home made, "
        + sheet.language().words()
        + ", "
        + sheet.paper().words()
        + ": code "
        + sheet.code().words();
  }

  private static String words(CourseFact.HandedOver handed, ClinicTime time) {
    return "Handed to somebody on call after "
        + tries(handed.tries())
        + ", the last "
        + time.words(handed.lastTry());
  }

  private static String words(CourseFact.DailyTabletDecided decided) {
    return decided.isAllowed()
        ? "Prescriber lets him go on with a daily low dose of a tablet for erections"
        : "Prescriber no longer lets him go on with a daily low dose of a tablet";
  }

  private static String words(CourseFact.TabletTaken taken, ClinicTime time) {
    return "Tablet for erections " + time.words(taken.at()) + ": " + taken.tablet().words();
  }

  private static String words(CourseFact.AnswerOverturned overturned) {
    return "The yes was wrong: "
        + overturned.condition().words()
        + ". Shown by: "
        + overturned.shownBy().words();
  }

  private static String words(CourseFact.FaultAcknowledged acknowledged) {
    return "Acknowledged as "
        + switch (acknowledged.side()) {
          case PRESCRIBER -> "prescriber";
          case KEEPER -> "who answers for the record";
        }
        + ": entry "
        + acknowledged.faulty()
        + " was changed after it was written. What was written before this proves nothing";
  }

  /** "1 try", "2 tries". */
  static String tries(int tries) {
    return tries == 1 ? "1 try" : tries + " tries";
  }

  private static String words(CourseFact.EmergencyReviewed reviewed, ClinicTime time) {
    return "Emergency reviewed"
        + reviewed
            .softWhenSeen()
            .map(at -> ", the end cannot be known; soft when seen or told " + time.words(at))
            .orElse("");
  }

  private static String words(CourseFact.PastReviewed reviewed) {
    return "Long erections from before reviewed: "
        + reviewed
            .reference()
            .map(preparation -> "injected was " + preparation)
            .orElse("nobody can tell what was injected");
  }

  private static String words(CourseFact.ExaminationRecorded exam, ClinicTime time) {
    return "Examined on "
        + exam.at().map(time::words).orElseGet(() -> ClinicTime.words(exam.day()))
        + ", curvature or scarring: "
        + exam.scarring().words();
  }

  private static String words(CourseFact.ObservationStarted started, ClinicTime time) {
    return "Injected in the clinic "
        + time.words(started.injectedAt())
        + ": "
        + started.drawn()
        + started.before().map(vitals -> ", before: " + vitals.words()).orElse("");
  }

  private static String words(CourseFact.ObservationNoted noted, ClinicTime time) {
    return "Observation "
        + time.words(noted.at())
        + ": "
        + noted.moment().words()
        + noted.grade().map(grade -> ", " + grade.words()).orElse("")
        + noted.vitals().map(vitals -> ", " + vitals.words()).orElse("");
  }

  private static String words(Plan plan) {
    return "Preparation "
        + plan.preparation()
        + ", syringe "
        + plan.barrel()
        + ", protocol "
        + plan.protocol()
        + " version "
        + plan.protocolVersion();
  }

  private static String words(CourseFact.ReadinessRecorded ready) {
    return "Before home use, "
        + ClinicTime.words(ready.day())
        + ": "
        + ready.item().words()
        + ready.plan().map(plan -> " (" + plan.words() + ")").orElse("")
        + (ready.note().isEmpty() ? "" : ". " + ready.note());
  }

  private static String words(CourseFact.DoseSigned signed, ClinicTime time) {
    return "Dose signed "
        + signed.place().words()
        + ": "
        + signed.volume()
        + signed.nextStep().map(next -> ", next step " + next).orElse("")
        + signed.accepted().map(most -> ", accepted up to " + most + " at it").orElse("")
        + signed.overridden().stream()
            .map(hold -> ". Overridden" + until(hold, time) + ": " + hold.rule().wording())
            .sorted()
            .collect(Collectors.joining());
  }

  private static String until(OverriddenHold hold, ClinicTime time) {
    return hold.until()
        .map(end -> " up to " + ClinicTime.words(time.dayOf(end.minusMillis(1))))
        .orElse("");
  }

  private static String words(CourseFact.InjectionReported report, ClinicTime time) {
    return "Injection of "
        + time.words(report.injectedAt())
        + ": "
        + report.drawn()
        + ", "
        + report.grade().words()
        + ", "
        + report.soft().words();
  }

  private static String words(CourseFact.ReportUnfinished unfinished, ClinicTime time) {
    return "May mean 4 hours or still firm, not complete: injection of "
        + unfinished.injectedAt().map(time::words).orElse("a time not known");
  }

  private static String screeningWords(CourseFact.Screened screened) {
    String yes =
        screened.answers().entrySet().stream()
            .filter(one -> one.getValue().answer() == Answer.YES)
            .map(one -> one.getKey().words())
            .collect(Collectors.joining("; "));
    long open =
        Condition.values().length
            - screened.answers().values().stream()
                .filter(one -> one.answer() != Answer.NOT_KNOWN)
                .count();
    return (yes.isEmpty() ? "no condition" : yes) + (open == 0 ? "" : ", " + open + " not known");
  }

  static String words(Baseline baseline) {
    return baseline
            .score()
            .map(score -> "score " + score.total() + " (" + score.band().words() + "), ")
            .orElse("")
        + "hands "
        + baseline.hands().words()
        + ", sight "
        + baseline.sight().words()
        + ", injects: "
        + baseline.injector().words();
  }

  private static String words(Opening opening) {
    return ", opened "
        + ClinicTime.words(opening.day())
        + opening.clock().map(clock -> " " + ClinicTime.clockText(clock)).orElse("");
  }

  private static String inUse(int days) {
    return new VialLimit.DaysOpen(days).words();
  }

  static String words(Vial vial) {
    return "lot "
        + vial.lot()
        + ", "
        + vial.composition()
        + ", label date "
        + ClinicTime.words(vial.dates().beyondUse())
        + vial.dates().opened().map(EntryWords::words).orElse("")
        + vial.dates().daysInUse().map(days -> ", " + inUse(days)).orElse("");
  }
}
