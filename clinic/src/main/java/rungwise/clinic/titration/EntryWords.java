package rungwise.clinic.titration;

import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact;

/** What an entry of the record says, in a line. */
final class EntryWords {

  private EntryWords() {}

  static String of(CourseFact fact, ClinicTime time) {
    return switch (fact) {
      case CourseFact.CourseOpened opened -> "Course opened, group " + opened.group().words();
      case CourseFact.ScreeningAnswered answered ->
          "Contraindication: " + answered.contraindication().words();
      case CourseFact.PlanChosen chosen ->
          "Preparation "
              + chosen.plan().preparation()
              + ", syringe "
              + chosen.plan().barrel()
              + ", protocol "
              + chosen.plan().protocol()
              + " version "
              + chosen.plan().protocolVersion();
      case CourseFact.ReadinessRecorded ready -> "Before home use: " + ready.item().words();
      case CourseFact.DoseSigned signed ->
          "Dose signed " + signed.place().words() + ": " + signed.volume();
      case CourseFact.InjectionReported report ->
          "Injection of "
              + time.words(report.injectedAt())
              + ": "
              + report.drawn()
              + ", "
              + report.grade().words()
              + ", "
              + report.soft().words();
      case CourseFact.ReportWithdrawn withdrawn -> "Report withdrawn";
      case CourseFact.VolumeReopened reopened -> "Reopened up to " + reopened.upTo();
      case CourseFact.EmergencyReviewed reviewed -> "Emergency reviewed";
    };
  }
}
