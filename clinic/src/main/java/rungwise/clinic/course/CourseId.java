package rungwise.clinic.course;

import java.util.UUID;

/**
 * The identity of a course.
 *
 * @param text a UUID in its lower-case form of 36 characters
 */
public record CourseId(String text) {

  public CourseId {
    if (!UUID.fromString(text).toString().equals(text)) {
      throw new IllegalArgumentException("bug: a course id of " + text);
    }
  }

  @Override
  public String toString() {
    return text;
  }
}
