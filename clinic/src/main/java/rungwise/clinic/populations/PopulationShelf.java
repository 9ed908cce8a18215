package rungwise.clinic.populations;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.known.PreparationId;

/**
 * Port: the populations that were signed, each once per name and version, and those that were
 * withdrawn. Instants are kept to the millisecond.
 */
public interface PopulationShelf {

  /**
   * A signed document.
   *
   * @param version counts the signatures of a name
   * @param preparations those that it was signed for
   */
  record Signed(
      String name,
      int version,
      String document,
      List<PreparationId> preparations,
      AccountId by,
      Instant at) {
    public Signed {
      preparations = List.copyOf(preparations);
    }
  }

  /** When and why one was taken out of use. */
  record Withdrawn(AccountId by, Instant at, String reason) {}

  /** A signed document and what became of it. */
  record Kept(Signed signed, Optional<Withdrawn> withdrawn) {}

  /** All of them, in the order in which they were signed. */
  List<Kept> all();

  /**
   * Keeps a signed document, inside the caller's transaction.
   *
   * @throws IllegalStateException outside a transaction, or if that name and version is there
   */
  void append(Signed signed);

  /**
   * Takes one out of use, inside the caller's transaction.
   *
   * @throws IllegalStateException outside a transaction, or if it is not there or withdrawn already
   */
  void withdraw(String name, int version, Withdrawn withdrawn);
}
