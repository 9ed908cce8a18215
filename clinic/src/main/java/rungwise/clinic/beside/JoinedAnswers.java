package rungwise.clinic.beside;

import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.course.Answers;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;

/**
 * What a man answered, with every yes of his other courses: he is one man, and what forbids a dose
 * in one forbids it in all. A no of another course grants nothing.
 */
public final class JoinedAnswers {

  private JoinedAnswers() {}

  /**
   * Of a course and those that are joined with it.
   *
   * @param limit the number of the last entry that is read of those
   */
  public static Answers of(
      CourseFile file, long limit, Function<CourseId, Optional<CourseFile>> courses) {
    Answers all = file.answers();
    for (JoinLog.Read other : JoinLog.others(file, limit, courses)) {
      all = all.with(other.file().answers(), other.since());
    }
    return all;
  }
}
