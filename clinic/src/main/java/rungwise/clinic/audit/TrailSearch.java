package rungwise.clinic.audit;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;

/**
 * What is looked for in the journal. What is empty is not asked.
 *
 * @param person who did it, or whose account it is about
 * @param course the course it belongs to or showed
 * @param kind what happened: "dose_signed"
 * @param from the first instant
 * @param until the first instant that is too late
 */
public record TrailSearch(
    Optional<AccountId> person,
    Optional<CourseId> course,
    Optional<String> kind,
    Optional<Instant> from,
    Optional<Instant> until) {

  public static final TrailSearch ALL =
      new TrailSearch(
          Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
}
