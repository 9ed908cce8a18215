package rungwise.clinic.course;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/**
 * A fact as it stands in the record.
 *
 * @param number rises with every entry of the whole clinic
 * @param corrects the entry that this one replaces
 * @param reason why, in the writer's words, where a reason is asked for
 */
public record CourseEntry(
    long number,
    EntryId id,
    Instant recordedAt,
    AccountId recordedBy,
    Optional<EntryId> corrects,
    Optional<String> reason,
    CourseFact fact) {

  /** The minute in which it was written: a form's time has no seconds. */
  public Instant minute() {
    return recordedAt.truncatedTo(ChronoUnit.MINUTES);
  }
}
