package rungwise.web.titration;

import org.springframework.http.HttpStatus;
import org.springframework.web.server.ResponseStatusException;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Titration;

/** Finds the course of an address, for every page that belongs to one. */
public final class OpenCourses {

  private final Titration titration;

  public OpenCourses(Titration titration) {
    this.titration = titration;
  }

  /**
   * The course as it is now.
   *
   * @throws ResponseStatusException not found, if there is no such course
   */
  public CourseState find(String id) {
    return titration
        .find(idOf(id))
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  /**
   * The id in an address.
   *
   * @throws ResponseStatusException not found, if it can be no id
   */
  public static CourseId idOf(String text) {
    return CourseController.courseId(text);
  }
}
