package rungwise.clinic.titration;

import java.util.Optional;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.EntryId;

/** A report form, filled in step by step; it begins as a good injection of the 12-unit mark. */
public record ReportForm(
    String date,
    String time,
    Occurrence occurrence,
    String mark,
    String grade,
    String soft,
    String minutes,
    String from,
    String before,
    String causes,
    Optional<EntryId> corrects,
    String reason) {

  /** An injection at a local time. */
  public static ReportForm at(String date, String time) {
    return new ReportForm(
        date,
        time,
        Occurrence.NOT_SAID,
        "12",
        "3",
        "exactly",
        "40",
        "",
        "",
        "none_found",
        Optional.empty(),
        "");
  }

  public ReportForm occurrence(Occurrence said) {
    return new ReportForm(
        date, time, said, mark, grade, soft, minutes, from, before, causes, corrects, reason);
  }

  public ReportForm mark(String typed) {
    return new ReportForm(
        date,
        time,
        occurrence,
        typed,
        grade,
        soft,
        minutes,
        from,
        before,
        causes,
        corrects,
        reason);
  }

  public ReportForm grade(String typed) {
    return new ReportForm(
        date, time, occurrence, mark, typed, soft, minutes, from, before, causes, corrects, reason);
  }

  public ReportForm exactly(String typed) {
    return new ReportForm(
        date, time, occurrence, mark, grade, "exactly", typed, "", "", causes, corrects, reason);
  }

  public ReportForm atLeast(String typed) {
    return new ReportForm(
        date, time, occurrence, mark, grade, "at_least", typed, "", "", causes, corrects, reason);
  }

  public ReportForm between(String least, String most) {
    return new ReportForm(
        date, time, occurrence, mark, grade, "between", "", least, most, causes, corrects, reason);
  }

  public ReportForm soft(String token) {
    return new ReportForm(
        date, time, occurrence, mark, grade, token, "", "", "", causes, corrects, reason);
  }

  public ReportForm causes(String token) {
    return new ReportForm(
        date, time, occurrence, mark, grade, soft, minutes, from, before, token, corrects, reason);
  }

  public ReportForm correcting(EntryId earlier, String why) {
    return new ReportForm(
        date,
        time,
        occurrence,
        mark,
        grade,
        soft,
        minutes,
        from,
        before,
        causes,
        Optional.of(earlier),
        why);
  }

  /** What is handed in. */
  public ReportDraft draft() {
    return new ReportDraft(
        date, time, occurrence, mark, grade, soft, minutes, from, before, causes, corrects, reason);
  }
}
