package rungwise.web.titration;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.titration.CourseState;
import rungwise.clinic.titration.ReportDraft;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Marking;
import rungwise.dosing.known.UnitScale;
import rungwise.quantities.Volume;

/**
 * The report form as typed; an absent field is empty.
 *
 * @param occurrence "FIRST" or "SECOND" where a time of day came twice
 */
public record ReportForm(
    @Nullable String date,
    @Nullable String time,
    @Nullable String occurrence,
    @Nullable String mark,
    @Nullable String grade,
    @Nullable String soft,
    @Nullable String exactMinutes,
    @Nullable String leastMinutes,
    @Nullable String fromMinutes,
    @Nullable String beforeMinutes,
    @Nullable String causes,
    @Nullable String reason) {

  private static final String NONE = "";
  private static final String AT_LEAST = "at_least";

  /** An empty form: today, and the mark of the dose in force. */
  static ReportForm empty(CourseState state, ClinicTime time) {
    Barrel barrel = state.question().ladder().barrel();
    String mark =
        state.file().signedDose().map(one -> mark(one.fact().volume(), barrel)).orElse(NONE);
    return new ReportForm(
        time.dateText(state.now()),
        NONE,
        NONE,
        mark,
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        NONE);
  }

  /** A report that is to be corrected. */
  static ReportForm of(InjectionReported report, ClinicTime time) {
    SoftAfter soft = report.soft();
    return new ReportForm(
        time.dateText(report.injectedAt()),
        time.timeText(report.injectedAt()),
        NONE,
        mark(report.drawn(), Barrels.of(report.barrel()).orElseThrow()),
        Integer.toString(report.grade().number()),
        kind(soft),
        soft instanceof SoftAfter.Exactly exactly ? exactly.duration().minutesText() : NONE,
        soft instanceof SoftAfter.AtLeast least ? least.duration().minutesText() : NONE,
        soft instanceof SoftAfter.Between between ? between.from().minutesText() : NONE,
        soft instanceof SoftAfter.Between between ? between.before().minutesText() : NONE,
        report.causes().name().toLowerCase(Locale.ROOT),
        NONE);
  }

  private static String kind(SoftAfter soft) {
    return switch (soft) {
      case SoftAfter.Exactly exactly -> "exactly";
      case SoftAfter.AtLeast atLeast -> AT_LEAST;
      case SoftAfter.Between between -> "between";
      case SoftAfter.NotKnown notKnown -> "not_known";
    };
  }

  private static String mark(Volume volume, Barrel barrel) {
    return barrel.marking() instanceof Marking.UnitLines
        ? UnitScale.U_100.markAt(volume).number()
        : volume.millilitresText();
  }

  ReportDraft draft(Optional<EntryId> corrects) {
    return new ReportDraft(
        said(date),
        said(time),
        Occurrence.valueOf(
            said(occurrence).isEmpty() ? Occurrence.NOT_SAID.name() : said(occurrence)),
        NONE,
        said(mark),
        said(grade),
        said(soft),
        said(said(soft).equals(AT_LEAST) ? leastMinutes : exactMinutes),
        said(fromMinutes),
        said(beforeMinutes),
        said(causes),
        NONE,
        ReportDraft.Details.NONE,
        corrects,
        said(reason));
  }

  static String said(@Nullable String text) {
    return Optional.ofNullable(text).orElse(NONE);
  }
}
