package rungwise.clinic.sheet;

import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.LifeWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.life.LifeWord;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.standing.LifeLog;

/** Whether a course runs, in words. */
final class LifeWords {

  private LifeWords() {}

  static String of(LifeWord word) {
    return switch (word) {
      case LifeWord.Paused paused -> "Treatment paused";
      case LifeWord.Resumed resumed -> "Treatment resumed";
      case LifeWord.Ended ended -> words(ended);
      case LifeWord.Reopened reopened -> "Treatment opened again";
    };
  }

  private static String words(LifeWord.Ended ended) {
    return "Treatment ended: "
        + ended.why().words()
        + ". Last injection: "
        + ended.lastDose().map(ClinicTime::words).orElse("not said")
        + ". Vials: "
        + ended.vials().words()
        + ". "
        + after(ended);
  }

  /** What treats him since, and to whom he is referred. */
  private static String after(LifeWord.Ended ended) {
    return "After it: "
        + ended.after().words()
        + (ended.referredTo().isEmpty() ? "" : ", referred to " + ended.referredTo());
  }

  /** By whom a course was brought to a stand, when and why, every pause; empty while it runs. */
  static Optional<String> standing(
      CourseFile file, ClinicTime time, Function<AccountId, String> names) {
    return LifeLog.of(file).standing().stream()
        .map(written -> standing(written, time, names))
        .reduce((before, next) -> before + " " + next);
  }

  private static String standing(
      Written<LifeWritten> written, ClinicTime time, Function<AccountId, String> names) {
    CourseEntry entry = written.entry();
    String what = written.fact().word() instanceof LifeWord.Ended ? "Ended" : "Paused";
    String reason = entry.reason().orElse("no reason was said");
    String after =
        written.fact().word() instanceof LifeWord.Ended ended ? " " + after(ended) + "." : "";
    return what
        + " by "
        + names.apply(entry.recordedBy())
        + ", "
        + time.words(entry.recordedAt())
        + ": "
        + reason
        + (reason.endsWith(".") ? "" : ".")
        + after;
  }
}
