package rungwise.web.session;

import java.time.Instant;
import rungwise.clinic.people.AccountId;

/**
 * Somebody who is signed in now.
 *
 * @param handle names the session on pages; it does not open it
 * @param address from which it was opened
 * @param browser as it names itself, cut short
 */
public record OpenSession(
    String handle,
    AccountId account,
    Instant since,
    Instant lastSeen,
    String address,
    String browser) {

  OpenSession seenAt(Instant now) {
    return new OpenSession(handle, account, since, now, address, browser);
  }
}
