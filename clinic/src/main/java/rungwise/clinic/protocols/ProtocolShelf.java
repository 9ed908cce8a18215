package rungwise.clinic.protocols;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/**
 * Port: the documents that were signed, each once per name and version. Instants are kept to the
 * millisecond.
 */
public interface ProtocolShelf {

  /**
   * A signed document.
   *
   * @param confirmed the numbers of it that its signer confirmed singly
   */
  record Signed(
      String name, int version, String document, List<String> confirmed, AccountId by, Instant at) {
    public Signed {
      confirmed = List.copyOf(confirmed);
    }
  }

  /** All of them, in the order in which they were signed. */
  List<Signed> all();

  Optional<Signed> find(String name, int version);

  /**
   * Keeps a signed document, inside the caller's transaction.
   *
   * @throws IllegalStateException outside a transaction, or if that name and version is there
   */
  void append(Signed signed);
}
