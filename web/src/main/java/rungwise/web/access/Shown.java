package rungwise.web.access;

import rungwise.clinic.audit.Screen;

/** Which men a route's pages name. Whoever is shown one is on record before it is sent. */
public sealed interface Shown {

  /** No man. */
  record Nobody() implements Shown {}

  /** The man whose course has the id in the path, and whom the page may tell besides. */
  record CourseOfPath(Screen screen) implements Shown {}

  /** The men whose courses the page itself tells: its view record is a {@link NamesCourses}. */
  record CoursesOfPage(Screen screen) implements Shown {}
}
