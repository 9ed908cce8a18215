package rungwise.web.today;

import java.time.Instant;
import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.web.access.NamesCourses;

/**
 * The day's list as shown.
 *
 * @param answer who needs somebody now, in one sentence
 * @param rows every course, the most worrying first
 * @param steps what to do first where there is nothing yet
 */
public record TodayPage(String answer, List<Row> rows, List<Step> steps, boolean mayOpenCourse)
    implements NamesCourses {

  /**
   * One course.
   *
   * @param since since when it waits
   * @param sinceWords the same for a reader
   * @param advice what is proposed, with volume and mark
   */
  public record Row(
      Need need,
      String man,
      String recordNumber,
      CourseId course,
      Instant since,
      String sinceWords,
      String advice,
      String because,
      String mayInject) {

    public String path() {
      return "/courses/" + course;
    }

    /** For who has no standing right to the course: enough to find the man who calls. */
    Row withoutAdvice() {
      return new Row(
          need,
          man,
          recordNumber,
          course,
          since,
          sinceWords,
          "Take access to the course to read it.",
          "",
          "");
    }
  }

  /**
   * Something to do first.
   *
   * @param path where it is done; empty if somebody else does it
   */
  public record Step(String sentence, String path, String word) {}

  public TodayPage {
    rows = List.copyOf(rows);
    steps = List.copyOf(steps);
  }

  @Override
  public List<CourseId> namedCourses() {
    return rows.stream().map(Row::course).toList();
  }
}
