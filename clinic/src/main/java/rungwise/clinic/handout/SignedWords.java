package rungwise.clinic.handout;

import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/** Port: which version of the patients' words a prescriber has signed for this clinic. */
public interface SignedWords {

  /** Who signed a version, and when. */
  record Signature(AccountId by, Instant at) {}

  /** Who signed a version first; empty while nobody has. */
  Optional<Signature> signed(int version);

  /** Writes down, inside the caller's transaction, that somebody has signed a version. */
  void sign(int version, AccountId by, Instant at);
}
