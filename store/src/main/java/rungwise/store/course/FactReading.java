package rungwise.store.course;

import static rungwise.store.schema.Tables.COURSE_OPENED;
import static rungwise.store.schema.Tables.DOSE_SIGNED;
import static rungwise.store.schema.Tables.ENTRY;
import static rungwise.store.schema.Tables.INJECTION_REPORTED;
import static rungwise.store.schema.Tables.PLAN_CHOSEN;
import static rungwise.store.schema.Tables.READINESS_RECORDED;
import static rungwise.store.schema.Tables.SCREENING_ANSWERED;
import static rungwise.store.schema.Tables.VOLUME_REOPENED;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.TableRecord;
import rungwise.clinic.course.ChangeReason;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.Patient;
import rungwise.clinic.course.Plan;
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
import rungwise.store.schema.tables.records.CourseOpenedRecord;
import rungwise.store.schema.tables.records.DoseSignedRecord;
import rungwise.store.schema.tables.records.InjectionReportedRecord;
import rungwise.store.schema.tables.records.PlanChosenRecord;
import rungwise.store.schema.tables.records.ReadinessRecordedRecord;
import rungwise.store.schema.tables.records.ScreeningAnsweredRecord;
import rungwise.store.schema.tables.records.VolumeReopenedRecord;

/**
 * Rows as the fact that they keep. {@link FactRows} is the way there.
 *
 * @param rungs the ladders that were signed, by the entry's id
 * @param overridden the holds that were overridden, by the entry's id
 */
record FactReading(Map<String, List<Long>> rungs, Map<String, List<String>> overridden) {

  /**
   * The fact of an entry.
   *
   * @param row the entry, joined with every table of facts
   * @throws IllegalStateException if the rows are not as the program wrote them
   */
  CourseFact fact(Record row) {
    return switch (Tokens.read(FactKind.class, row.get(ENTRY.KIND))) {
      case COURSE_OPENED -> opened(own(row, COURSE_OPENED));
      case SCREENING_ANSWERED -> answered(own(row, SCREENING_ANSWERED));
      case PLAN_CHOSEN -> chosen(own(row, PLAN_CHOSEN));
      case READINESS_RECORDED -> recorded(own(row, READINESS_RECORDED));
      case DOSE_SIGNED -> signed(own(row, DOSE_SIGNED));
      case INJECTION_REPORTED -> reported(own(row, INJECTION_REPORTED));
      case REPORT_WITHDRAWN -> new CourseFact.ReportWithdrawn();
      case VOLUME_REOPENED -> reopened(own(row, VOLUME_REOPENED));
      case EMERGENCY_REVIEWED -> new CourseFact.EmergencyReviewed();
    };
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

  private static CourseFact answered(ScreeningAnsweredRecord row) {
    return new CourseFact.ScreeningAnswered(Tokens.read(Answer.class, row.getContraindication()));
  }

  private static CourseFact chosen(PlanChosenRecord row) {
    return new CourseFact.PlanChosen(
        new Plan(
            new PreparationId(row.getPreparation()),
            row.getBarrel(),
            row.getProtocol(),
            row.getProtocolVersion()));
  }

  private static CourseFact recorded(ReadinessRecordedRecord row) {
    return new CourseFact.ReadinessRecorded(Tokens.read(Readiness.class, row.getItem()));
  }

  private CourseFact signed(DoseSignedRecord row) {
    String entry = row.getEntryId();
    var rules = EnumSet.noneOf(GuardRule.class);
    overridden
        .getOrDefault(entry, List.of())
        .forEach(rule -> rules.add(Tokens.read(GuardRule.class, rule)));
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
        rules,
        Optional.ofNullable(row.getChangeReason())
            .map(token -> Tokens.read(ChangeReason.class, token)),
        row.getBasis(),
        row.getAskedAt(),
        row.getAdvice());
  }

  private static CourseFact reported(InjectionReportedRecord row) {
    return new CourseFact.InjectionReported(
        row.getInjectedAt(),
        new PreparationId(row.getPreparation()),
        row.getBarrel(),
        Volume.ofMicrolitres(row.getDrawnMicrolitres()),
        Volume.ofMicrolitres(row.getOrderedMicrolitres()),
        Grade.of(row.getGrade()).orElseThrow(),
        soft(row),
        Tokens.read(SimpleCauses.class, row.getSimpleCauses()));
  }

  private static SoftAfter soft(InjectionReportedRecord row) {
    return switch (Tokens.read(SoftKind.class, row.getSoftAfter())) {
      case EXACTLY -> new SoftAfter.Exactly(new TimeSpan(row.getSoftFromMilliseconds()));
      case AT_LEAST -> new SoftAfter.AtLeast(new TimeSpan(row.getSoftFromMilliseconds()));
      case BETWEEN ->
          new SoftAfter.Between(
              new TimeSpan(row.getSoftFromMilliseconds()),
              new TimeSpan(row.getSoftBeforeMilliseconds()));
      case NOT_KNOWN -> new SoftAfter.NotKnown();
    };
  }

  private static CourseFact reopened(VolumeReopenedRecord row) {
    return new CourseFact.VolumeReopened(
        new PreparationId(row.getPreparation()), Volume.ofMicrolitres(row.getUpToMicrolitres()));
  }
}
