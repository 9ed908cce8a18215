package rungwise.clinic.access;

import java.time.Instant;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;

/**
 * Access to one course that somebody without a standing right to it has taken.
 *
 * @param reason in words, for whoever reviews it
 * @param goodUntil the first instant at which it no longer counts
 */
public record TakenAccess(
    AccountId by, CourseId course, String reason, Instant at, Instant goodUntil) {

  /** The same as it stands in the record, under the number of its entry. */
  public record Numbered(long number, TakenAccess access) {}
}
