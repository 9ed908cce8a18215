package rungwise.store.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.TableRecord;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.SoftAfter;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.schema.tables.records.CourseOpenedRecord;
import rungwise.store.schema.tables.records.DoseSignedOverrideRecord;
import rungwise.store.schema.tables.records.DoseSignedRecord;
import rungwise.store.schema.tables.records.DoseSignedRungRecord;
import rungwise.store.schema.tables.records.InjectionReportedRecord;
import rungwise.store.schema.tables.records.PlanChosenRecord;
import rungwise.store.schema.tables.records.ReadinessRecordedRecord;
import rungwise.store.schema.tables.records.ScreeningAnsweredRecord;
import rungwise.store.schema.tables.records.VolumeReopenedRecord;

/** A fact as the rows that keep it. {@link FactReading} is the way back. */
final class FactRows {

  private FactRows() {}

  static List<TableRecord<?>> of(CourseFact fact) {
    return switch (fact) {
      case CourseFact.CourseOpened opened -> List.of(row(opened));
      case CourseFact.ScreeningAnswered answered -> List.of(row(answered));
      case CourseFact.PlanChosen chosen -> List.of(row(chosen.plan()));
      case CourseFact.ReadinessRecorded recorded -> List.of(row(recorded));
      case CourseFact.DoseSigned signed -> rows(signed);
      case CourseFact.InjectionReported reported -> List.of(row(reported));
      case CourseFact.ReportWithdrawn withdrawn -> List.of();
      case CourseFact.VolumeReopened reopened -> List.of(row(reopened));
      case CourseFact.EmergencyReviewed reviewed -> List.of();
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

  private static ScreeningAnsweredRecord row(CourseFact.ScreeningAnswered answered) {
    var row = new ScreeningAnsweredRecord();
    row.setContraindication(Tokens.of(answered.contraindication()));
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

  private static ReadinessRecordedRecord row(CourseFact.ReadinessRecorded recorded) {
    var row = new ReadinessRecordedRecord();
    row.setItem(Tokens.of(recorded.item()));
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
    int overrideLine = 0;
    for (GuardRule rule : signed.overridden().stream().sorted().toList()) {
      overrideLine++;
      var row = new DoseSignedOverrideRecord();
      row.setLine(overrideLine);
      row.setGuardRule(Tokens.of(rule));
      rows.add(row);
    }
    return rows;
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
    row.setAdvice(signed.advice());
    return row;
  }

  private static InjectionReportedRecord row(CourseFact.InjectionReported reported) {
    var row = new InjectionReportedRecord();
    row.setInjectedAt(reported.injectedAt());
    row.setPreparation(reported.preparation().value());
    row.setBarrel(reported.barrel());
    row.setDrawnMicrolitres(reported.drawn().microlitres());
    row.setOrderedMicrolitres(reported.ordered().microlitres());
    row.setGrade((short) reported.grade().number());
    row.setSimpleCauses(Tokens.of(reported.causes()));
    switch (reported.soft()) {
      case SoftAfter.Exactly exactly ->
          soft(row, SoftKind.EXACTLY, Optional.of(exactly.duration()), Optional.empty());
      case SoftAfter.AtLeast atLeast ->
          soft(row, SoftKind.AT_LEAST, Optional.of(atLeast.duration()), Optional.empty());
      case SoftAfter.Between between ->
          soft(row, SoftKind.BETWEEN, Optional.of(between.from()), Optional.of(between.before()));
      case SoftAfter.NotKnown notKnown ->
          soft(row, SoftKind.NOT_KNOWN, Optional.empty(), Optional.empty());
    }
    return row;
  }

  private static void soft(
      InjectionReportedRecord row,
      SoftKind kind,
      Optional<TimeSpan> from,
      Optional<TimeSpan> before) {
    row.setSoftAfter(Tokens.of(kind));
    row.setSoftFromMilliseconds(from.map(TimeSpan::milliseconds).orElse(null));
    row.setSoftBeforeMilliseconds(before.map(TimeSpan::milliseconds).orElse(null));
  }

  private static VolumeReopenedRecord row(CourseFact.VolumeReopened reopened) {
    var row = new VolumeReopenedRecord();
    row.setPreparation(reopened.preparation().value());
    row.setUpToMicrolitres(reopened.upTo().microlitres());
    return row;
  }
}
