package rungwise.clinic.factor;

import java.util.List;

/** What an account has set up, without any secret. */
public record FactorStanding(boolean hasAuthenticator, int recoveryCodes, List<Passkey> passkeys) {

  public FactorStanding {
    passkeys = List.copyOf(passkeys);
  }

  /** Whether there is anything to ask for. */
  public boolean isSetUp() {
    return hasAuthenticator || !passkeys.isEmpty();
  }
}
