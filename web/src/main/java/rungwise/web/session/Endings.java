package rungwise.web.session;

import rungwise.clinic.people.AccountId;

/** Ends all that somebody was let in by: where the secret changes, what it has opened is over. */
public record Endings(Sessions sessions, Shifts shifts) {

  /**
   * Ends every session and every second proof of an account; gives how many sessions there were.
   */
  public int endAllOf(AccountId account) {
    shifts.endAllOf(account);
    return sessions.end(Sessions.isOf(account));
  }
}
