package rungwise.clinic.clock;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/** Port: what the record says of the clock. */
public interface ClockEntries {

  /** When the newest entry was written by a clock that was not known to be wrong. */
  Optional<Instant> newest();

  /**
   * Writes down, inside the caller's transaction, that somebody has compared date and time.
   *
   * @param words what he read and what he wrote
   */
  void confirmed(AccountId by, Instant at, String words);
}
