package rungwise.clinic.people;

import java.time.Instant;
import java.util.Optional;

/**
 * What proves that somebody is the holder of an account: the hash of a secret, never the secret.
 *
 * @param holder whose it is; {@link AccountId#PROGRAM} for the first administrator's code
 * @param goodUntil the first instant at which it no longer counts; empty if it does not age
 */
public record Credential(AccountId holder, Kind kind, String hash, Optional<Instant> goodUntil) {

  /** What the secret is. A holder has at most one of each. */
  public enum Kind {
    PASSWORD,
    CODE
  }

  boolean isGoodAt(Instant now) {
    return goodUntil.map(now::isBefore).orElse(true);
  }

  /** Without the hash, so that it reaches no log. */
  @Override
  public String toString() {
    return "Credential[" + kind + " of " + holder + "]";
  }
}
