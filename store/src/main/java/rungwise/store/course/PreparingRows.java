package rungwise.store.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.TableRecord;
import rungwise.clinic.coded.ShownBy;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.ErectileScore;
import rungwise.dosing.screening.Screening.Answered;
import rungwise.store.schema.tables.records.AnswerOverturnedRecord;
import rungwise.store.schema.tables.records.BaselineRecordedRecord;
import rungwise.store.schema.tables.records.DecisionWrittenRecord;
import rungwise.store.schema.tables.records.ExaminationRecordedRecord;
import rungwise.store.schema.tables.records.ReadinessRecordedLineRecord;
import rungwise.store.schema.tables.records.ReadinessRecordedRecord;
import rungwise.store.schema.tables.records.ScreenedAnswerRecord;
import rungwise.store.schema.tables.records.ScreenedRecord;
import rungwise.store.schema.tables.records.SheetMadeRecord;
import rungwise.store.schema.tables.records.VialReceivedRecord;
import rungwise.store.words.Tokens;

/** What comes before the doses, as rows and back: screening, baseline, vials, teaching. */
final class PreparingRows {

  private PreparingRows() {}

  static List<TableRecord<?>> rows(CourseFact.Screened screened) {
    var rows = new ArrayList<TableRecord<?>>();
    var head = new ScreenedRecord();
    head.setAnswers(screened.answers().size());
    rows.add(head);
    int line = 0;
    for (Condition condition : screened.answers().keySet()) {
      line++;
      Answered answered = screened.answers().get(condition);
      var row = new ScreenedAnswerRecord();
      row.setLine(line);
      row.setConditionName(Tokens.of(condition));
      row.setAnswer(Tokens.of(answered.answer()));
      row.setAnsweredAt(answered.at());
      rows.add(row);
    }
    return rows;
  }

  static DecisionWrittenRecord row(CourseFact.DecisionWritten decision) {
    var row = new DecisionWrittenRecord();
    row.setConditionName(Tokens.of(decision.condition()));
    return row;
  }

  static CourseFact decision(DecisionWrittenRecord row) {
    return new CourseFact.DecisionWritten(Tokens.read(Condition.class, row.getConditionName()));
  }

  static AnswerOverturnedRecord row(CourseFact.AnswerOverturned overturned) {
    var row = new AnswerOverturnedRecord();
    row.setConditionName(Tokens.of(overturned.condition()));
    row.setShownBy(Tokens.of(overturned.shownBy()));
    return row;
  }

  static CourseFact overturned(AnswerOverturnedRecord row) {
    return new CourseFact.AnswerOverturned(
        Tokens.read(Condition.class, row.getConditionName()),
        Tokens.read(ShownBy.class, row.getShownBy()));
  }

  static BaselineRecordedRecord row(Baseline baseline) {
    var row = new BaselineRecordedRecord();
    row.setScore(baseline.score().map(score -> (short) score.total()).orElse(null));
    row.setHands(Tokens.of(baseline.hands()));
    row.setSight(Tokens.of(baseline.sight()));
    row.setInjector(Tokens.of(baseline.injector()));
    return row;
  }

  static CourseFact baseline(BaselineRecordedRecord row) {
    return new CourseFact.BaselineRecorded(
        new Baseline(
            Optional.ofNullable(row.getScore()).map(total -> new ErectileScore(total)),
            Tokens.read(Baseline.Ability.class, row.getHands()),
            Tokens.read(Baseline.Ability.class, row.getSight()),
            Tokens.read(Baseline.Injector.class, row.getInjector())));
  }

  static ExaminationRecordedRecord row(CourseFact.ExaminationRecorded exam) {
    var row = new ExaminationRecordedRecord();
    row.setExaminedOn(exam.day());
    row.setExaminedAt(exam.at().orElse(null));
    row.setScarring(Tokens.of(exam.scarring()));
    return row;
  }

  static CourseFact examination(ExaminationRecordedRecord row) {
    return new CourseFact.ExaminationRecorded(
        row.getExaminedOn(),
        Optional.ofNullable(row.getExaminedAt()),
        Tokens.read(Answer.class, row.getScarring()));
  }

  static VialReceivedRecord row(CourseFact.VialReceived received) {
    VialReceivedRecord row = VialRows.row(received.vial());
    row.setOfClinic(received.ofClinic().map(EntryId::text).orElse(null));
    return row;
  }

  static CourseFact vial(VialReceivedRecord row) {
    return new CourseFact.VialReceived(
        VialRows.read(row), Optional.ofNullable(row.getOfClinic()).map(EntryId::new));
  }

  static List<TableRecord<?>> rows(CourseFact.ReadinessRecorded recorded) {
    var rows = new ArrayList<TableRecord<?>>();
    rows.add(row(recorded));
    int line = 0;
    for (EmergencyPlan.Said said : recorded.plan().map(EmergencyPlan::more).orElse(List.of())) {
      line++;
      var row = new ReadinessRecordedLineRecord();
      row.setLine(line);
      row.setAsked(said.asked());
      row.setAnswer(said.answer());
      rows.add(row);
    }
    return rows;
  }

  private static ReadinessRecordedRecord row(CourseFact.ReadinessRecorded recorded) {
    var row = new ReadinessRecordedRecord();
    row.setItem(Tokens.of(recorded.item()));
    row.setDoneOn(recorded.day());
    row.setHospital(recorded.plan().map(EmergencyPlan::hospital).orElse(null));
    row.setAfterHoursNumber(recorded.plan().map(EmergencyPlan::afterHoursNumber).orElse(null));
    row.setTransport(recorded.plan().map(EmergencyPlan::transport).orElse(null));
    row.setNote(recorded.note());
    return row;
  }

  /**
   * What home use needs.
   *
   * @param lines what the plan says beside hospital, number and transport
   */
  static CourseFact readiness(
      ReadinessRecordedRecord row, List<ReadinessRecordedLineRecord> lines) {
    Optional<EmergencyPlan> plan =
        Optional.ofNullable(row.getHospital())
            .map(
                hospital ->
                    new EmergencyPlan(
                        hospital,
                        row.getAfterHoursNumber(),
                        row.getTransport(),
                        lines.stream()
                            .map(line -> new EmergencyPlan.Said(line.getAsked(), line.getAnswer()))
                            .toList()));
    return new CourseFact.ReadinessRecorded(
        Tokens.read(Readiness.class, row.getItem()), row.getDoneOn(), plan, row.getNote());
  }

  static SheetMadeRecord row(CourseFact.SheetMade made) {
    HomeSheet sheet = made.sheet();
    var row = new SheetMadeRecord();
    row.setOrderEntry(made.order().text());
    row.setVialEntry(made.vial().text());
    row.setPlanEntry(made.plan().text());
    row.setSheetId(sheet.id());
    row.setCode(sheet.code().text());
    row.setLanguage(sheet.language().tag());
    row.setPaper(sheet.paper().token());
    row.setWordsVersion(sheet.wordsVersion());
    row.setAddress(sheet.address());
    row.setSaid(sheet.said());
    return row;
  }

  static CourseFact made(SheetMadeRecord row) {
    return new CourseFact.SheetMade(
        new EntryId(row.getOrderEntry()),
        new EntryId(row.getVialEntry()),
        new EntryId(row.getPlanEntry()),
        HomeSheet.read(
            row.getSheetId(),
            Language.of(row.getLanguage()).orElseThrow(),
            Paper.of(row.getPaper()).orElseThrow(),
            row.getWordsVersion(),
            row.getAddress(),
            row.getSaid()));
  }
}
