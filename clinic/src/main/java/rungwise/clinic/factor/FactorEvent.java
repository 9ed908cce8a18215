package rungwise.clinic.factor;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/**
 * Something that happened to the second proof of an account.
 *
 * @param reason why; for a reset
 */
public record FactorEvent(
    Kind kind, AccountId account, AccountId by, Instant at, Optional<String> reason) {

  /** What happened. */
  public enum Kind {
    AUTHENTICATOR_SET_UP,
    RECOVERY_CODES_MADE,
    RECOVERY_CODE_USED,
    PASSKEY_ADDED,
    PASSKEY_REMOVED,
    SECOND_FACTOR_GIVEN,
    SECOND_FACTOR_REFUSED,
    SECOND_FACTOR_RESET
  }

  static FactorEvent own(Kind kind, AccountId account, Instant at) {
    return new FactorEvent(kind, account, account, at, Optional.empty());
  }
}
