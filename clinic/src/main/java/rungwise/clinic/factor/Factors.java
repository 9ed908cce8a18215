package rungwise.clinic.factor;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/**
 * Port: the secrets, recovery codes and passkeys in use, which are replaced and removed, and the
 * events, which are not. What could be used by a thief is stored hashed or encrypted.
 */
public interface Factors {

  Optional<TimeSecret> timeSecret(AccountId holder);

  /** Keeps a secret instead of the holder's earlier one. */
  void put(TimeSecret secret);

  /** The hashes of the recovery codes that are still good. */
  List<String> recoveryCodes(AccountId holder);

  /** Keeps these hashes instead of the holder's earlier ones. */
  void putRecoveryCodes(AccountId holder, List<String> hashes);

  /** Those of a holder, the first added first. */
  List<Passkey> passkeys(AccountId holder);

  Optional<Passkey> passkey(String id);

  /** Keeps a passkey instead of that of the same id. */
  void put(Passkey passkey);

  void removePasskey(String id);

  /** Forgets all that is kept for a holder. */
  void removeAll(AccountId holder);

  void append(FactorEvent event);
}
