package rungwise.clinic.people;

import java.util.Optional;

/**
 * Port: the hashes of passwords and one-time codes. Unlike every record they are replaced and
 * removed, because an old hash is of use only to a thief.
 */
public interface Credentials {

  Optional<Credential> find(AccountId holder, Credential.Kind kind);

  /** Keeps a credential instead of the holder's earlier one of its kind, if there is one. */
  void put(Credential credential);

  /** Forgets a credential; does nothing if there is none. */
  void remove(AccountId holder, Credential.Kind kind);
}
