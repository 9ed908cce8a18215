package rungwise.files.history;

import rungwise.dosing.fit.Courses;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;

/** Who is told of the courses of a file, one after another. */
interface CourseTaker {

  /** A course begins, of a patient of this group. */
  void course(String group);

  /** A trial of the course that began last, as {@link Courses.Builder#trial} takes it. */
  void trial(double logDose, Grade grade, Lasted lasted);

  /** One that hands them to a builder. */
  static CourseTaker into(Courses.Builder builder) {
    return new CourseTaker() {
      @Override
      public void course(String group) {
        builder.course(group);
      }

      @Override
      public void trial(double logDose, Grade grade, Lasted lasted) {
        builder.trial(logDose, grade, lasted);
      }
    };
  }
}
