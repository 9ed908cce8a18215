package rungwise.clinic.protocols;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/** Port: the documents that were signed, each once per name and version. */
public interface ProtocolShelf {

  /** A signed document. */
  record Signed(String name, int version, String document, AccountId by, Instant at) {}

  List<Signed> all();

  Optional<Signed> find(String name, int version);

  /**
   * Keeps a signed document.
   *
   * @throws IllegalStateException if that name and version is already there
   */
  void append(Signed signed);
}
