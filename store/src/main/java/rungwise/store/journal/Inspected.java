package rungwise.store.journal;

import java.time.Instant;
import java.util.Optional;

/** What a walk over the whole journal found. */
public sealed interface Inspected {

  /**
   * Every entry is as it was sealed.
   *
   * @param entries how many there are
   * @param lastSeal the seal of the last one, to be kept elsewhere: 64 hexadecimal digits
   * @param lastAt when the last one was recorded; empty if there is none
   */
  record Whole(long entries, String lastSeal, Optional<Instant> lastAt) implements Inspected {}

  /**
   * The record is not as it was sealed.
   *
   * @param standing what stands under that number now, if it can be read
   */
  record Broken(BrokenEntry first, Optional<Standing> standing) implements Inspected {}

  /**
   * The head of an entry as it stands now; a part of it may be what was changed.
   *
   * @param by the id or the sign-in name of the account that recorded it
   * @param kind what happened, in words with underscores
   */
  record Standing(Instant at, String by, String kind) {

    public Standing namedAs(String name) {
      return new Standing(at, name, kind);
    }
  }
}
