package rungwise.store.course;

import static rungwise.store.schema.Tables.ANSWER_OVERTURNED;
import static rungwise.store.schema.Tables.BASELINE_RECORDED;
import static rungwise.store.schema.Tables.CALL_WRITTEN;
import static rungwise.store.schema.Tables.CORRECTION_CONFIRMED;
import static rungwise.store.schema.Tables.COURSE_OPENED;
import static rungwise.store.schema.Tables.DAILY_TABLET_DECIDED;
import static rungwise.store.schema.Tables.DECISION_WRITTEN;
import static rungwise.store.schema.Tables.DOSE_SIGNED;
import static rungwise.store.schema.Tables.DOSE_SIGNED_ACCEPTED;
import static rungwise.store.schema.Tables.DOSE_SIGNED_DECISION;
import static rungwise.store.schema.Tables.ELSEWHERE_JOINED;
import static rungwise.store.schema.Tables.ELSEWHERE_WRITTEN;
import static rungwise.store.schema.Tables.EMERGENCY_REVIEWED_END;
import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.EXAMINATION_RECORDED;
import static rungwise.store.schema.Tables.FAULT_ACKNOWLEDGED;
import static rungwise.store.schema.Tables.HANDED_OVER;
import static rungwise.store.schema.Tables.INJECTION_NOT_ORDERED;
import static rungwise.store.schema.Tables.INJECTION_REPORTED;
import static rungwise.store.schema.Tables.LIFE_WRITTEN;
import static rungwise.store.schema.Tables.OBSERVATION_NOTED;
import static rungwise.store.schema.Tables.OBSERVATION_STARTED;
import static rungwise.store.schema.Tables.PAST_REVIEWED;
import static rungwise.store.schema.Tables.PLAN_CHOSEN;
import static rungwise.store.schema.Tables.REACH_WRITTEN;
import static rungwise.store.schema.Tables.READINESS_RECORDED;
import static rungwise.store.schema.Tables.REPORT_UNFINISHED;
import static rungwise.store.schema.Tables.RESCUE_WRITTEN;
import static rungwise.store.schema.Tables.SCREENED;
import static rungwise.store.schema.Tables.SHEET_MADE;
import static rungwise.store.schema.Tables.TABLET_TAKEN;
import static rungwise.store.schema.Tables.VIAL_BEFELL;
import static rungwise.store.schema.Tables.VIAL_RECEIVED;
import static rungwise.store.schema.Tables.VOLUME_REOPENED;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.Table;
import org.jooq.TableRecord;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
import rungwise.dosing.decision.DecisionValues;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.history.Place;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening.Answered;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.schema.tables.records.CourseOpenedRecord;
import rungwise.store.schema.tables.records.DoseSignedRecord;
import rungwise.store.schema.tables.records.InjectionReportedRecord;
import rungwise.store.schema.tables.records.PlanChosenRecord;
import rungwise.store.schema.tables.records.ReadinessRecordedLineRecord;
import rungwise.store.schema.tables.records.ReadinessRecordedRecord;
import rungwise.store.schema.tables.records.ReportUnfinishedLineRecord;
import rungwise.store.schema.tables.records.ReportUnfinishedRecord;
import rungwise.store.schema.tables.records.RescueWrittenRecord;
import rungwise.store.schema.tables.records.ScreenedAnswerRecord;
import rungwise.store.schema.tables.records.ScreenedRecord;
import rungwise.store.words.BefellRows;
import rungwise.store.words.CallRows;
import rungwise.store.words.LifeRows;
import rungwise.store.words.ReachRows;
import rungwise.store.words.RescueRows;
import rungwise.store.words.TabletRows;
import rungwise.store.words.Tokens;

/**
 * Rows as the fact that they keep. {@link FactRows} is the way there.
 *
 * @param rungs the ladders that were signed, by the entry's id
 * @param overridden the holds that were overridden, by the entry's id
 * @param decisions the values of the advices that were signed
 * @param causes what went wrong, by the entry's id
 * @param answers the answers of a screening, by the entry's id
 * @param saidLines what was typed into unfinished reports, by the entry's id
 * @param rescueHolds why doses of a rescue were held that were prepared, by the entry's id
 * @param planLines what emergency plans say beside what all say, by the entry's id
 */
record FactReading(
    Map<String, List<Long>> rungs,
    HoldRows overridden,
    DecisionRows decisions,
    Map<String, List<String>> causes,
    Map<String, Result<ScreenedAnswerRecord>> answers,
    Map<String, Result<ReadinessRecordedLineRecord>> planLines,
    Map<String, Result<ReportUnfinishedLineRecord>> saidLines,
    Map<String, List<String>> rescueHolds) {

  /**
   * The fact of an entry.
   *
   * @param row the entry, joined with every table of facts
   * @throws IllegalStateException if the rows are not as the program wrote them
   */
  CourseFact fact(Record row) {
    return switch (Tokens.read(FactKind.class, row.get(ENTRY.KIND))) {
      case COURSE_OPENED -> opened(own(row, COURSE_OPENED));
      case SCREENED -> screened(own(row, SCREENED));
      case DECISION_WRITTEN -> PreparingRows.decision(own(row, DECISION_WRITTEN));
      case ANSWER_OVERTURNED -> PreparingRows.overturned(own(row, ANSWER_OVERTURNED));
      case BASELINE_RECORDED -> PreparingRows.baseline(own(row, BASELINE_RECORDED));
      case EXAMINATION_RECORDED -> PreparingRows.examination(own(row, EXAMINATION_RECORDED));
      case VIAL_RECEIVED -> PreparingRows.vial(own(row, VIAL_RECEIVED));
      case OBSERVATION_STARTED ->
          InjectionRows.started(own(row, OBSERVATION_STARTED), isOrdered(row));
      case OBSERVATION_NOTED -> InjectionRows.noted(own(row, OBSERVATION_NOTED));
      case PLAN_CHOSEN -> chosen(own(row, PLAN_CHOSEN));
      case READINESS_RECORDED -> readiness(own(row, READINESS_RECORDED));
      case DOSE_SIGNED ->
          signed(
              own(row, DOSE_SIGNED),
              decisions.of(row.into(DOSE_SIGNED_DECISION)),
              Optional.ofNullable(row.get(DOSE_SIGNED_ACCEPTED.UP_TO_MILLISECONDS)));
      case INJECTION_REPORTED -> reported(own(row, INJECTION_REPORTED), isOrdered(row));
      case HANDED_OVER -> InjectionRows.handed(own(row, HANDED_OVER));
      case REPORT_UNFINISHED -> unfinished(own(row, REPORT_UNFINISHED));
      case CALL_WRITTEN -> new CourseFact.CallWritten(CallRows.word(own(row, CALL_WRITTEN)));
      case RESCUE_WRITTEN -> rescue(own(row, RESCUE_WRITTEN));
      case REACH_WRITTEN -> new CourseFact.ReachWritten(ReachRows.word(own(row, REACH_WRITTEN)));
      case LIFE_WRITTEN -> new CourseFact.LifeWritten(LifeRows.word(own(row, LIFE_WRITTEN)));
      case VIAL_BEFELL -> BefellRows.befell(own(row, VIAL_BEFELL));
      case ELSEWHERE_WRITTEN -> elsewhere(row);
      case SHEET_MADE -> PreparingRows.made(own(row, SHEET_MADE));
      case FLAGS_SEEN -> new CourseFact.FlagsSeen();
      case TABLET_TAKEN -> TabletRows.taken(own(row, TABLET_TAKEN));
      case DAILY_TABLET_DECIDED -> TabletRows.decided(own(row, DAILY_TABLET_DECIDED));
      case REPORT_WITHDRAWN -> new CourseFact.ReportWithdrawn();
      case VOLUME_REOPENED -> LiftingRows.reopened(own(row, VOLUME_REOPENED));
      case EMERGENCY_REVIEWED -> LiftingRows.reviewed(row.into(EMERGENCY_REVIEWED_END));
      case CORRECTION_CONFIRMED -> LiftingRows.confirmed(own(row, CORRECTION_CONFIRMED));
      case PAST_REVIEWED -> LiftingRows.past(own(row, PAST_REVIEWED));
      case FAULT_ACKNOWLEDGED -> LiftingRows.acknowledged(own(row, FAULT_ACKNOWLEDGED));
    };
  }

  private static CourseFact elsewhere(Record row) {
    return new CourseFact.ElsewhereWritten(
        row.get(ELSEWHERE_JOINED.ENTRY_ID) == null
            ? ElsewhereRows.word(own(row, ELSEWHERE_WRITTEN))
            : ElsewhereRows.word(own(row, ELSEWHERE_JOINED)));
  }

  private static <R extends TableRecord<R>> R own(Record row, Table<R> table) {
    R own = row.into(table);
    if (own.get("entry_id") == null) {
      throw new IllegalStateException(
          "The journal was changed by another program: entry "
              + row.get(ENTRY.SEQ)
              + " has no row in "
              + table.getName()
              + ". Restore a backup.");
    }
    return own;
  }

  private static CourseFact opened(CourseOpenedRecord row) {
    return new CourseFact.CourseOpened(
        new Patient(row.getFullName(), row.getBirthDate(), row.getRecordNumber()),
        Tokens.read(AetiologyGroup.class, row.getAetiologyGroup()));
  }

  private static <R extends Record> List<R> linesOf(Map<String, Result<R>> lines, String entry) {
    Result<R> own = lines.get(entry);
    return own == null ? List.of() : own;
  }

  private CourseFact readiness(ReadinessRecordedRecord row) {
    return PreparingRows.readiness(row, linesOf(planLines, row.getEntryId()));
  }

  private CourseFact screened(ScreenedRecord row) {
    var read = new EnumMap<Condition, Answered>(Condition.class);
    for (ScreenedAnswerRecord line : linesOf(answers, row.getEntryId())) {
      read.put(
          Tokens.read(Condition.class, line.getConditionName()),
          new Answered(Tokens.read(Answer.class, line.getAnswer()), line.getAnsweredAt()));
    }
    return new CourseFact.Screened(read);
  }

  private static boolean isOrdered(Record row) {
    return row.get(INJECTION_NOT_ORDERED.ENTRY_ID) == null;
  }

  private CourseFact reported(InjectionReportedRecord row, boolean isOrdered) {
    return InjectionRows.reported(row, isOrdered, causes.getOrDefault(row.getEntryId(), List.of()));
  }

  private CourseFact unfinished(ReportUnfinishedRecord row) {
    return UnfinishedRows.unfinished(row, linesOf(saidLines, row.getEntryId()));
  }

  private CourseFact rescue(RescueWrittenRecord row) {
    return RescueRows.written(row, rescueHolds.getOrDefault(row.getEntryId(), List.of()));
  }

  private static CourseFact chosen(PlanChosenRecord row) {
    return new CourseFact.PlanChosen(
        new Plan(
            new PreparationId(row.getPreparation()),
            row.getBarrel(),
            row.getProtocol(),
            row.getProtocolVersion()));
  }

  private CourseFact signed(
      DoseSignedRecord row, Optional<DecisionValues> values, Optional<Long> accepted) {
    String entry = row.getEntryId();
    return new CourseFact.DoseSigned(
        new Plan(
            new PreparationId(row.getPreparation()),
            row.getBarrel(),
            row.getProtocol(),
            row.getProtocolVersion()),
        Volume.ofMicrolitres(row.getVolumeMicrolitres()),
        Tokens.read(Place.class, row.getPlace()),
        rungs.getOrDefault(entry, List.of()).stream().map(Volume::ofMicrolitres).toList(),
        Volume.ofMicrolitres(row.getCeilingMicrolitres()),
        overridden.of(entry),
        Optional.ofNullable(row.getChangeReason())
            .map(token -> Tokens.read(ChangeReason.class, token)),
        row.getBasis(),
        row.getAskedAt(),
        new KeptAdvice(row.getAdvice(), values),
        Optional.ofNullable(row.getNextStepMicrolitres()).map(Volume::ofMicrolitres),
        accepted.map(TimeSpan::new));
  }
}
