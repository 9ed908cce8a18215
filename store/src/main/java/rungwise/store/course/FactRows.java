package rungwise.store.course;

import java.util.ArrayList;
import java.util.List;
import org.jooq.TableRecord;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.schema.tables.records.CourseOpenedRecord;
import rungwise.store.schema.tables.records.DoseSignedAcceptedRecord;
import rungwise.store.schema.tables.records.DoseSignedRecord;
import rungwise.store.schema.tables.records.DoseSignedRungRecord;
import rungwise.store.schema.tables.records.PlanChosenRecord;
import rungwise.store.words.BefellRows;
import rungwise.store.words.CallRows;
import rungwise.store.words.LifeRows;
import rungwise.store.words.ReachRows;
import rungwise.store.words.RescueRows;
import rungwise.store.words.TabletRows;
import rungwise.store.words.Tokens;

/** A fact as the rows that keep it. {@link FactReading} is the way back. */
final class FactRows {

  private FactRows() {}

  static List<TableRecord<?>> of(CourseFact fact) {
    return switch (fact) {
      case CourseFact.CourseOpened opened -> List.of(row(opened));
      case CourseFact.Screened screened -> PreparingRows.rows(screened);
      case CourseFact.DecisionWritten decision -> List.of(PreparingRows.row(decision));
      case CourseFact.AnswerOverturned overturned -> List.of(PreparingRows.row(overturned));
      case CourseFact.BaselineRecorded baseline -> List.of(PreparingRows.row(baseline.baseline()));
      case CourseFact.ExaminationRecorded exam -> List.of(PreparingRows.row(exam));
      case CourseFact.VialReceived received -> List.of(PreparingRows.row(received));
      case CourseFact.ObservationStarted started -> InjectionRows.rows(started);
      case CourseFact.ObservationNoted noted -> List.of(InjectionRows.row(noted));
      case CourseFact.PlanChosen chosen -> List.of(row(chosen.plan()));
      case CourseFact.ReadinessRecorded recorded -> PreparingRows.rows(recorded);
      case CourseFact.DoseSigned signed -> rows(signed);
      case CourseFact.InjectionReported reported -> InjectionRows.rows(reported);
      case CourseFact.HandedOver handed -> List.of(InjectionRows.row(handed));
      case CourseFact.ReportUnfinished unfinished -> UnfinishedRows.rows(unfinished);
      case CourseFact.CallWritten written -> List.of(CallRows.row(written.word()));
      case CourseFact.RescueWritten written -> RescueRows.rows(written);
      case CourseFact.ReachWritten written -> List.of(ReachRows.row(written.word()));
      case CourseFact.LifeWritten written -> List.of(LifeRows.row(written.word()));
      case CourseFact.VialBefell befell -> List.of(BefellRows.row(befell));
      case CourseFact.ElsewhereWritten written -> List.of(ElsewhereRows.row(written.word()));
      case CourseFact.SheetMade made -> List.of(PreparingRows.row(made));
      case CourseFact.FlagsSeen seen -> List.of();
      case CourseFact.TabletTaken taken -> List.of(TabletRows.row(taken));
      case CourseFact.DailyTabletDecided decided -> List.of(TabletRows.row(decided));
      case CourseFact.ReportWithdrawn withdrawn -> List.of();
      case CourseFact.VolumeReopened reopened -> List.of(LiftingRows.row(reopened));
      case CourseFact.EmergencyReviewed reviewed -> LiftingRows.rows(reviewed);
      case CourseFact.CorrectionConfirmed confirmed -> List.of(LiftingRows.row(confirmed));
      case CourseFact.PastReviewed reviewed -> List.of(LiftingRows.row(reviewed));
      case CourseFact.FaultAcknowledged acknowledged -> List.of(LiftingRows.row(acknowledged));
    };
  }

  private static CourseOpenedRecord row(CourseFact.CourseOpened opened) {
    Patient patient = opened.patient();
    var row = new CourseOpenedRecord();
    row.setFullName(patient.fullName());
    row.setBirthDate(patient.birthDate());
    row.setRecordNumber(patient.recordNumber());
    row.setNameKey(patient.nameKey());
    row.setRecordKey(patient.recordKey());
    row.setAetiologyGroup(Tokens.of(opened.group()));
    return row;
  }

  private static PlanChosenRecord row(Plan plan) {
    var row = new PlanChosenRecord();
    row.setPreparation(plan.preparation().value());
    row.setBarrel(plan.barrel());
    row.setProtocol(plan.protocol());
    row.setProtocolVersion(plan.protocolVersion());
    return row;
  }

  private static List<TableRecord<?>> rows(CourseFact.DoseSigned signed) {
    var rows = new ArrayList<TableRecord<?>>();
    rows.add(row(signed));
    int rungLine = 0;
    for (Volume rung : signed.rungs()) {
      rungLine++;
      var row = new DoseSignedRungRecord();
      row.setLine(rungLine);
      row.setVolumeMicrolitres(rung.microlitres());
      rows.add(row);
    }
    rows.addAll(HoldRows.rows(signed.overridden()));
    signed.accepted().map(FactRows::row).ifPresent(rows::add);
    signed.advice().values().map(DecisionRows::rows).ifPresent(rows::addAll);
    return rows;
  }

  private static DoseSignedAcceptedRecord row(TimeSpan accepted) {
    var row = new DoseSignedAcceptedRecord();
    row.setUpToMilliseconds(accepted.milliseconds());
    return row;
  }

  private static DoseSignedRecord row(CourseFact.DoseSigned signed) {
    Plan plan = signed.plan();
    var row = new DoseSignedRecord();
    row.setPreparation(plan.preparation().value());
    row.setBarrel(plan.barrel());
    row.setProtocol(plan.protocol());
    row.setProtocolVersion(plan.protocolVersion());
    row.setVolumeMicrolitres(signed.volume().microlitres());
    row.setPlace(Tokens.of(signed.place()));
    row.setCeilingMicrolitres(signed.ceiling().microlitres());
    row.setChangeReason(signed.changed().map(Tokens::of).orElse(null));
    row.setBasis(signed.basis());
    row.setAskedAt(signed.askedAt());
    row.setAdvice(signed.advice().text());
    row.setNextStepMicrolitres(signed.nextStep().map(Volume::microlitres).orElse(null));
    return row;
  }
}
