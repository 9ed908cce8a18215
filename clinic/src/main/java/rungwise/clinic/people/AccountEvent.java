package rungwise.clinic.people;

import java.time.Instant;

/**
 * Something that changed an account.
 *
 * @param account the account as it is afterwards
 * @param by who did it; {@link AccountId#PROGRAM} at first start
 */
public record AccountEvent(Kind kind, Account account, AccountId by, Instant at) {

  /** What happened. */
  public enum Kind {
    ACCOUNT_INVITED,
    NEW_CODE_GIVEN,
    PASSWORD_SET,
    ROLES_CHANGED,
    ACCOUNT_DEACTIVATED,
    SESSIONS_ENDED
  }
}
