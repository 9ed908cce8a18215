package rungwise.clinic.audit;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;

/**
 * One entry of the journal as an auditor reads it: who did what, when, and to whom; not what a
 * course says.
 *
 * @param about the account it is about, if it is about one
 * @param courses those it belongs to or showed
 * @param reason as it was written, if one was
 */
public record TrailLine(
    long number,
    Instant at,
    AccountId by,
    String kind,
    Optional<AccountId> about,
    List<CourseId> courses,
    Optional<String> reason) {

  public TrailLine {
    courses = List.copyOf(courses);
  }
}
