package rungwise.web.titration;

import java.util.Map;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.standing.CourseChanges;

/** A short form of the course page: what is said once it is done, and its names of the fields. */
enum CourseForm {
  SIGN("The dose is signed.", Map.of(CourseChanges.REASON, SignForm.REASON)),
  REVIEW(
      "The review is on record. The next dose is a new signature, in the clinic.",
      Map.of(
          CourseChanges.REASON,
          LiftingForms.REVIEW_REASON,
          ClinicTime.DATE_FIELD,
          LiftingForms.SOFT_DATE,
          ClinicTime.TIME_FIELD,
          LiftingForms.SOFT_TIME)),
  CONFIRM(
      "The correction is confirmed: the report before it counts no more.",
      Map.of(CourseChanges.REASON, LiftingForms.CONFIRM_REASON)),
  SEEN(
      "The flagged reports are marked as seen by you.",
      Map.of(CourseChanges.REASON, LiftingForms.SEEN_WORDS)),
  PAST(
      "What he was injected with before this record is written down.",
      Map.of(CourseChanges.REASON, LiftingForms.PAST_REASON));

  private final String notice;
  private final Map<String, String> names;

  CourseForm(String notice, Map<String, String> names) {
    this.notice = notice;
    this.names = names;
  }

  String notice() {
    return notice;
  }

  /** The field of the page that a fault belongs to. */
  String fieldOf(String field) {
    return names.getOrDefault(field, field);
  }
}
