package rungwise.clinic.titration;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.titration.ReportDraft.Details;

/** A report form, filled in step by step; it begins as a good injection of the 12-unit mark. */
public final class ReportForm {

  private enum Box {
    DATE,
    TIME,
    BARREL,
    MARK,
    GRADE,
    SOFT,
    MINUTES,
    FROM,
    BEFORE,
    CAUSES,
    PLACE,
    REASON
  }

  private final Map<Box, String> typed;
  private final Occurrence occurrence;
  private final Details details;
  private final Optional<EntryId> corrects;
  private final boolean isVialUnknown;

  private ReportForm(
      Map<Box, String> typed,
      Occurrence occurrence,
      Details details,
      Optional<EntryId> corrects,
      boolean isVialUnknown) {
    this.isVialUnknown = isVialUnknown;
    this.typed = typed;
    this.occurrence = occurrence;
    this.details = details;
    this.corrects = corrects;
  }

  /** An injection at a local time. */
  public static ReportForm at(String date, String time) {
    return new ReportForm(Map.of(), Occurrence.NOT_SAID, Details.NONE, Optional.empty(), false)
        .with(Box.DATE, date)
        .with(Box.TIME, time)
        .mark("12")
        .grade("3")
        .exactly("40")
        .causes("none_found");
  }

  private ReportForm with(Box box, String text) {
    var changed = new EnumMap<Box, String>(Box.class);
    changed.putAll(typed);
    changed.put(box, text);
    return new ReportForm(changed, occurrence, details, corrects, isVialUnknown);
  }

  public ReportForm occurrence(Occurrence said) {
    return new ReportForm(typed, said, details, corrects, isVialUnknown);
  }

  public ReportForm barrel(String token) {
    return with(Box.BARREL, token);
  }

  public ReportForm mark(String text) {
    return with(Box.MARK, text);
  }

  public ReportForm grade(String text) {
    return with(Box.GRADE, text);
  }

  public ReportForm exactly(String minutes) {
    return soft("exactly").with(Box.MINUTES, minutes);
  }

  public ReportForm atLeast(String minutes) {
    return soft("at_least").with(Box.MINUTES, minutes);
  }

  public ReportForm between(String least, String most) {
    return soft("between").with(Box.FROM, least).with(Box.BEFORE, most);
  }

  /** How it is known when it was soft; any minutes are left empty. */
  public ReportForm soft(String token) {
    return with(Box.SOFT, token).with(Box.MINUTES, "").with(Box.FROM, "").with(Box.BEFORE, "");
  }

  public ReportForm causes(String token) {
    return with(Box.CAUSES, token);
  }

  public ReportForm place(String token) {
    return with(Box.PLACE, token);
  }

  public ReportForm details(Details said) {
    return new ReportForm(typed, occurrence, said, corrects, isVialUnknown);
  }

  public ReportForm correcting(EntryId earlier, String why) {
    return new ReportForm(typed, occurrence, details, Optional.of(earlier), isVialUnknown)
        .with(Box.REASON, why);
  }

  /** What is handed in for a course: from the vial in use, unless it says which or none. */
  ReportDraft draftFor(Optional<CourseFile> file) {
    return details.vial().isEmpty() && !isVialUnknown
        ? withVial(file.flatMap(CourseFile::vial).map(vial -> vial.entry().id())).draft()
        : draft();
  }

  /** The same without a vial. */
  public ReportForm vialNotKnown() {
    return new ReportForm(typed, occurrence, details, corrects, /* isVialUnknown= */ true);
  }

  private ReportForm withVial(Optional<EntryId> vial) {
    return details(
        new Details(
            details.onsetMinutes(),
            details.usableMinutes(),
            details.side(),
            details.hour(),
            details.pain(),
            details.bruise(),
            details.aroused(),
            details.causes(),
            vial.map(EntryId::text).orElse(""),
            details.otherTablets(),
            details.secondDose()));
  }

  private String text(Box box) {
    return typed.getOrDefault(box, "");
  }

  /** What is handed in. */
  public ReportDraft draft() {
    return new ReportDraft(
        text(Box.DATE),
        text(Box.TIME),
        occurrence,
        text(Box.BARREL),
        text(Box.MARK),
        text(Box.GRADE),
        text(Box.SOFT),
        text(Box.MINUTES),
        text(Box.FROM),
        text(Box.BEFORE),
        text(Box.CAUSES),
        text(Box.PLACE),
        details,
        corrects,
        text(Box.REASON));
  }
}
