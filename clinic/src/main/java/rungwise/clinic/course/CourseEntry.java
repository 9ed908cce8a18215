package rungwise.clinic.course;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.AnswerOverturned;
import rungwise.clinic.course.CourseFact.BaselineRecorded;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.clinic.course.CourseFact.CorrectionConfirmed;
import rungwise.clinic.course.CourseFact.CourseOpened;
import rungwise.clinic.course.CourseFact.DailyTabletDecided;
import rungwise.clinic.course.CourseFact.DecisionWritten;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.ElsewhereWritten;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.ExaminationRecorded;
import rungwise.clinic.course.CourseFact.FaultAcknowledged;
import rungwise.clinic.course.CourseFact.FlagsSeen;
import rungwise.clinic.course.CourseFact.HandedOver;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.LifeWritten;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFact.PastReviewed;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFact.ReachWritten;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFact.ReportUnfinished;
import rungwise.clinic.course.CourseFact.ReportWithdrawn;
import rungwise.clinic.course.CourseFact.RescueWritten;
import rungwise.clinic.course.CourseFact.Screened;
import rungwise.clinic.course.CourseFact.SheetMade;
import rungwise.clinic.course.CourseFact.TabletTaken;
import rungwise.clinic.course.CourseFact.VialBefell;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.soundness.Acknowledgement;
import rungwise.clinic.soundness.Acknowledgement.Side;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening.Answered;

/**
 * A fact as it stands in the record.
 *
 * @param number rises with every entry of the whole clinic
 * @param corrects the entry that this one replaces
 * @param reason why, in the writer's words, where a reason is asked for
 */
public record CourseEntry(
    long number,
    EntryId id,
    Instant recordedAt,
    AccountId recordedBy,
    Optional<EntryId> corrects,
    Optional<String> reason,
    CourseFact fact) {

  /** What people have acknowledged of faults, in the order of the entries. */
  static List<Acknowledgement> acknowledgements(List<CourseEntry> entries) {
    return entries.stream().flatMap(entry -> entry.acknowledgement().stream()).toList();
  }

  private Optional<Acknowledgement> acknowledgement() {
    return fact instanceof FaultAcknowledged(long faulty, String read, Side side)
        ? Optional.of(new Acknowledgement(number, faulty, read, recordedBy.text(), side))
        : Optional.empty();
  }

  /**
   * The entries that count: those that no later one corrects. Up to the last acknowledged fault
   * they prove nothing: what is left of each is what stops.
   *
   * @param unproven the number of the entry that acknowledged it; 0 if none did
   */
  static List<CourseEntry> counting(List<CourseEntry> entries, long unproven) {
    Set<EntryId> corrected =
        entries.stream()
            .flatMap(entry -> entry.corrects().stream())
            .collect(Collectors.toUnmodifiableSet());
    return entries.stream()
        .filter(entry -> !corrected.contains(entry.id()))
        .flatMap(entry -> entry.number() > unproven ? Stream.of(entry) : entry.onlyWhatStops())
        .toList();
  }

  private Stream<CourseEntry> onlyWhatStops() {
    return onlyWhatStops(fact).stream()
        .map(left -> new CourseEntry(number, id, recordedAt, recordedBy, corrects, reason, left));
  }

  /** The minute in which it was written: a form's time has no seconds. */
  public Instant minute() {
    return recordedAt.truncatedTo(ChronoUnit.MINUTES);
  }

  /**
   * What is left of a fact where nothing is proven any more: it may stop and close, and opens
   * nothing. A signature, a vial, what was shown or decided, and every no are gone.
   */
  private static Optional<CourseFact> onlyWhatStops(CourseFact fact) {
    return switch (fact) {
      case Screened screened -> Optional.of(withoutNo(screened));
      case ExaminationRecorded exam ->
          Optional.<CourseFact>of(exam).filter(one -> exam.scarring() == Answer.YES);
      case DailyTabletDecided decided ->
          Optional.<CourseFact>of(decided).filter(one -> !decided.isAllowed());
      case DecisionWritten decision -> Optional.empty();
      case AnswerOverturned overturned -> Optional.empty();
      case VialReceived vial -> Optional.empty();
      case ReadinessRecorded readiness -> Optional.empty();
      case DoseSigned dose -> Optional.empty();
      case FlagsSeen seen -> Optional.empty();
      case SheetMade sheet -> Optional.empty();
      case VolumeReopened reopened -> Optional.empty();
      case EmergencyReviewed reviewed -> Optional.empty();
      case CorrectionConfirmed confirmed -> Optional.empty();
      case PastReviewed reviewed -> Optional.empty();
      case CourseOpened opened -> Optional.of(opened);
      case BaselineRecorded baseline -> Optional.of(baseline);
      case ObservationStarted started -> Optional.of(started);
      case ObservationNoted noted -> Optional.of(noted);
      case PlanChosen chosen -> Optional.of(chosen);
      case InjectionReported report -> Optional.of(report);
      case HandedOver handed -> Optional.of(handed);
      case ReportUnfinished unfinished -> Optional.of(unfinished);
      case TabletTaken taken -> Optional.of(taken);
      case CallWritten call -> Optional.<CourseFact>of(call).filter(one -> call.word().holds());
      case RescueWritten rescue -> Optional.of(rescue);
      case ReachWritten reach -> Optional.<CourseFact>of(reach).filter(one -> reach.word().holds());
      case LifeWritten life -> Optional.<CourseFact>of(life).filter(one -> life.word().holds());
      case VialBefell befell ->
          Optional.<CourseFact>of(befell).filter(one -> befell.word().stops());
      case ElsewhereWritten transfer ->
          Optional.<CourseFact>of(transfer).filter(one -> transfer.word().holds());
      case ReportWithdrawn withdrawn -> Optional.of(withdrawn);
      case FaultAcknowledged acknowledged -> Optional.of(acknowledged);
    };
  }

  private static Screened withoutNo(Screened screened) {
    var answers = new EnumMap<Condition, Answered>(Condition.class);
    answers.putAll(screened.answers());
    answers.values().removeIf(answered -> answered.answer() == Answer.NO);
    return new Screened(answers);
  }
}
