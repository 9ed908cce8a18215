package rungwise.dosing.history;

import java.time.Instant;
import java.util.Optional;

/**
 * A prescriber's written review of an emergency. It covers what the record held when it was
 * written: a report entered later is not covered, whenever the injection was.
 *
 * @param entry the number of the record's entry that says so
 * @param softWhenSeen when he was seen or told to be soft, where the prescriber has written that
 *     the end cannot be known; without it the review covers no report that does not say the end
 */
public record EmergencyReview(long entry, Optional<Instant> softWhenSeen) {

  boolean covers(Injection emergency) {
    return covers(emergency.entry(), emergency.soft());
  }

  /** Whether it was written after an entry, and covers what that said of the end. */
  boolean covers(long emergency, SoftAfter soft) {
    return entry > emergency && (soft.hasKnownEnd() || softWhenSeen.isPresent());
  }
}
