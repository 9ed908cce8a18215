package rungwise.web.beside;

import rungwise.clinic.sheet.CourseView;

/** Every entry of a course, the last one first. */
public record RecordPage(CourseView view) {

  public String path() {
    return "/courses/" + view.id();
  }
}
