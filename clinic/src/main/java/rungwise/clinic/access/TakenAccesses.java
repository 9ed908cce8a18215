package rungwise.clinic.access;

import java.time.Instant;
import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;

/** Port: every access that was taken, as entries of the one journal. */
public interface TakenAccesses {

  void append(TakenAccess access);

  /** Whether somebody's access to a course is good at an instant. */
  boolean isGood(AccountId by, CourseId course, Instant at);

  /**
   * Every access that was taken, the newest first.
   *
   * @param before only those with a smaller number
   * @param most how many at the most
   */
  List<TakenAccess.Numbered> list(long before, int most);
}
