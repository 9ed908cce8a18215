package rungwise.clinic.titration;

import java.util.Optional;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;

/** A report form, filled in step by step; it begins as a good injection of the 12-unit mark. */
public record ReportForm(ReportDraft draft) {

  /** An injection at a local time of a man who is known to be the one. */
  public static ReportForm at(String date, String time) {
    return new ReportForm(ReportDraft.EMPTY)
        .with(ReportPart.IDENTIFIED, "yes")
        .with(ReportPart.DATE, date)
        .with(ReportPart.TIME, time)
        .mark("12")
        .grade("3")
        .exactly("40")
        .causes("none_found");
  }

  /** The same with exactly that in a part. */
  public ReportForm with(ReportPart part, String... values) {
    return new ReportForm(draft.with(part, values));
  }

  public ReportForm occurrence(Occurrence said) {
    return with(ReportPart.OCCURRENCE, said.name());
  }

  public ReportForm barrel(String token) {
    return with(ReportPart.BARREL, token);
  }

  public ReportForm mark(String text) {
    return with(ReportPart.MARK, text);
  }

  public ReportForm grade(String text) {
    return with(ReportPart.GRADE, text);
  }

  public ReportForm exactly(String minutes) {
    return soft("exactly").with(ReportPart.EXACT_MINUTES, minutes);
  }

  public ReportForm atLeast(String minutes) {
    return soft("at_least").with(ReportPart.LEAST_MINUTES, minutes);
  }

  public ReportForm between(String least, String most) {
    return soft("between")
        .with(ReportPart.FROM_MINUTES, least)
        .with(ReportPart.BEFORE_MINUTES, most);
  }

  /** How it is known when it was soft; the fields of every answer are left empty. */
  public ReportForm soft(String token) {
    ReportForm form = with(ReportPart.SOFT, token);
    for (EndAnswer answer : EndAnswer.values()) {
      for (ReportPart part : answer.parts()) {
        form = form.with(part, "");
      }
    }
    return form;
  }

  public ReportForm causes(String token) {
    return with(ReportPart.CAUSES, token);
  }

  public ReportForm place(String token) {
    return with(ReportPart.PLACE, token);
  }

  /** The same of which nobody knows the vial. */
  public ReportForm vialNotKnown() {
    return with(ReportPart.VIAL, ReportPart.VIAL_NOT_KNOWN);
  }

  /** The same from the vial in use, or of the report that it corrects, unless it says which. */
  ReportForm from(Optional<CourseFile> file) {
    return draft.typed().containsKey(ReportPart.VIAL)
        ? this
        : file.flatMap(this::vialOf).map(this::vial).orElseGet(this::vialNotKnown);
  }

  private Optional<EntryId> vialOf(CourseFile file) {
    Optional<EntryId> inUse = file.vial().map(vial -> vial.entry().id());
    return draft
        .corrects()
        .flatMap(entry -> ReportReading.reported(file, entry))
        .map(earlier -> earlier.details().vial())
        .orElse(inUse);
  }

  /** Which vial it was drawn from. */
  public ReportForm vial(EntryId vial) {
    return with(ReportPart.VIAL, vial.text());
  }

  public ReportForm correcting(EntryId earlier, String why) {
    return new ReportForm(draft.correcting(earlier)).with(ReportPart.REASON, why);
  }

  public ReportForm completing(EntryId unfinished) {
    return new ReportForm(draft.completing(unfinished));
  }
}
