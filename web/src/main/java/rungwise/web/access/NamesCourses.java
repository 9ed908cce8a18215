package rungwise.web.access;

import java.util.List;
import rungwise.clinic.course.CourseId;

/** The view record of a page that names several men. */
@FunctionalInterface
public interface NamesCourses {

  /** The courses of every man that the page names, each once. */
  List<CourseId> namedCourses();
}
