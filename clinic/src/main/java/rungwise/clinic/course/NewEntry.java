package rungwise.clinic.course;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/** A fact that is about to be appended; the record gives it its number and its id. */
public record NewEntry(
    CourseId course,
    CourseFact fact,
    AccountId by,
    Instant at,
    Optional<EntryId> corrects,
    Optional<String> reason) {

  public static NewEntry of(CourseId course, CourseFact fact, AccountId by, Instant at) {
    return new NewEntry(course, fact, by, at, Optional.empty(), Optional.empty());
  }

  public NewEntry because(String why) {
    return new NewEntry(course, fact, by, at, corrects, Optional.of(why));
  }

  public NewEntry correcting(EntryId earlier) {
    return new NewEntry(course, fact, by, at, Optional.of(earlier), reason);
  }
}
