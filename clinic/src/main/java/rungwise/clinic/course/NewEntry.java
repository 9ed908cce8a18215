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

  /** The most characters of the writer's own words. */
  public static final int LONGEST_WORDS = 1000;

  public NewEntry {
    if (reason.filter(words -> words.length() > LONGEST_WORDS).isPresent()) {
      throw new IllegalArgumentException("bug: words longer than " + LONGEST_WORDS);
    }
  }

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
