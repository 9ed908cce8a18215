package rungwise.clinic.day;

import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ReportWithdrawn;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.dosing.decision.Advice;

/** Whether a signature answers what is proposed now. */
final class Decided {

  private Decided() {}

  /**
   * Whether the prescriber signed this dose in the face of this very advice: nothing was reported
   * since, and what was proposed then is what is proposed now.
   */
  static boolean by(CourseFile file, Written<DoseSigned> signed, Advice advice) {
    boolean isNewest =
        file.entries().stream()
            .filter(entry -> entry.number() > signed.fact().basis())
            .map(CourseEntry::fact)
            .noneMatch(
                fact -> fact instanceof InjectionReported || fact instanceof ReportWithdrawn);
    return isNewest && signed.fact().advice().proposesTheSameAs(advice);
  }
}
