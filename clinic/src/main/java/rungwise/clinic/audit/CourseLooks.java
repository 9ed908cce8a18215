package rungwise.clinic.audit;

import java.util.List;
import java.util.OptionalLong;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Patient;

/**
 * A part of the list of those who have seen a course, the newest view first.
 *
 * @param older the number before which the next part begins; empty if this is the last part
 */
public record CourseLooks(CourseId course, Patient patient, List<Look> looks, OptionalLong older) {

  public CourseLooks {
    looks = List.copyOf(looks);
  }
}
