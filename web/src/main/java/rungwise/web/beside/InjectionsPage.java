package rungwise.web.beside;

import rungwise.clinic.sheet.CourseView;
import rungwise.web.titration.CourseDrawings;

/**
 * Every injection of a course, drawn and as a table.
 *
 * @param mayCorrect whether the reader may correct a report
 */
public record InjectionsPage(CourseView view, CourseDrawings drawings, boolean mayCorrect) {

  public String path() {
    return "/courses/" + view.id();
  }
}
