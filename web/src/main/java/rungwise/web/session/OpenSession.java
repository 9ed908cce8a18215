package rungwise.web.session;

import java.time.Instant;
import rungwise.clinic.people.AccountId;

/**
 * Somebody who is signed in now.
 *
 * @param handle names the session on pages; it does not open it
 * @param age by which it ends, whatever the clock is set to
 * @param address from which it was opened
 * @param browser as it names itself, cut short
 */
public record OpenSession(
    String handle,
    AccountId account,
    Instant since,
    Instant lastSeen,
    Age age,
    String address,
    String browser) {

  /** When it was opened and last seen, in nanoseconds of a count that nobody can set. */
  record Age(long opened, long seen) {}

  OpenSession seenAt(Instant now, long nanos) {
    return new OpenSession(
        handle, account, since, now, new Age(age.opened(), nanos), address, browser);
  }
}
