package rungwise.store.journal;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * The head of an entry that is about to be appended.
 *
 * @param id a UUID that no other entry has
 * @param kind what happened, in words with underscores: "account_invited"
 * @param course the course it belongs to, if it belongs to one
 * @param at when it was recorded; kept to the millisecond
 * @param by the account that recorded it
 * @param onBehalfOf the account for which it was recorded, if not for the recorder's own
 * @param corrects the id of the entry that this one corrects
 * @param reason why, where a reason is asked for
 */
public record NewEntry(
    String id,
    String kind,
    Optional<String> course,
    Instant at,
    String by,
    Optional<String> onBehalfOf,
    Optional<String> corrects,
    Optional<String> reason) {

  /** An entry of its own id, without a course and the rest. */
  public static NewEntry of(String kind, Instant at, String by) {
    return new NewEntry(
        UUID.randomUUID().toString(),
        kind,
        Optional.empty(),
        at,
        by,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  public NewEntry withId(String given) {
    return new NewEntry(given, kind, course, at, by, onBehalfOf, corrects, reason);
  }

  public NewEntry inCourse(String given) {
    return new NewEntry(id, kind, Optional.of(given), at, by, onBehalfOf, corrects, reason);
  }

  public NewEntry onBehalfOf(String given) {
    return new NewEntry(id, kind, course, at, by, Optional.of(given), corrects, reason);
  }

  public NewEntry correcting(String entry, String why) {
    return new NewEntry(id, kind, course, at, by, onBehalfOf, Optional.of(entry), Optional.of(why));
  }

  public NewEntry because(String why) {
    return new NewEntry(id, kind, course, at, by, onBehalfOf, corrects, Optional.of(why));
  }
}
