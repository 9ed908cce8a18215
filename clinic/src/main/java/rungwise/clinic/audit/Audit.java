package rungwise.clinic.audit;

import java.util.List;
import rungwise.clinic.course.CourseId;

/**
 * Port: the views, as entries of the one journal. A view belongs to no course's own entries: it
 * neither changes what a course says nor moves the number up to which advice has read.
 */
public interface Audit {

  /**
   * Appends a view inside the caller's transaction.
   *
   * @throws IllegalStateException outside a transaction
   */
  void append(Viewed viewed);

  /**
   * The views of a course, the newest first.
   *
   * @param before only those with a smaller number
   * @param most how many at the most
   */
  List<Look> of(CourseId course, long before, int most);
}
