package rungwise.web.titration;

import org.springframework.http.HttpStatus;
import org.springframework.web.server.ResponseStatusException;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Titration;

/** What stands in the address of a page about a course. What is not there is answered by 404. */
public final class CoursePaths {

  private CoursePaths() {}

  /** The course of an address. */
  public static CourseState find(Titration titration, String id) {
    return titration
        .find(CourseController.courseId(id))
        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
  }

  /** The entry of an address; it may be none of the course. */
  public static EntryId entryId(String text) {
    try {
      return new EntryId(text);
    } catch (IllegalArgumentException notAnId) {
      throw new ResponseStatusException(HttpStatus.NOT_FOUND, "no such entry", notAnId);
    }
  }
}
