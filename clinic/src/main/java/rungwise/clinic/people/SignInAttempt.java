package rungwise.clinic.people;

import java.time.Instant;
import java.util.Optional;

/**
 * One try at signing in. A name that belongs to no account is not kept, because people type their
 * password there by mistake.
 *
 * @param account whose name was given; empty if nobody's
 */
public record SignInAttempt(Optional<AccountId> account, Outcome outcome, Instant at) {

  /** How it went. */
  public enum Outcome {
    SIGNED_IN,
    REFUSED
  }

  public SignInAttempt {
    if (outcome == Outcome.SIGNED_IN && account.isEmpty()) {
      throw new IllegalArgumentException("bug: nobody signed in");
    }
  }
}
