package rungwise.clinic.room;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/** Port: the days on which somebody said that nobody was left under observation. */
public interface RoomDays {

  /** The last day that was closed. */
  Optional<LocalDate> lastClosed();

  /**
   * Writes down that a day was closed, inside the caller's transaction.
   *
   * @throws IllegalStateException outside a transaction
   */
  void close(LocalDate day, AccountId by, Instant at);
}
