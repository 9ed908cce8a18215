package rungwise.clinic.supply;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.people.AccountId;

/** Port: the vials that the clinic keeps for injections at a visit. All writes are appended. */
public interface ClinicVialShelf {

  /** Every vial that is kept still, in the order in which they were written down. */
  List<ClinicVial> kept();

  /** A vial that is kept still, by the text of its id, whatever that text is. */
  default Optional<ClinicVial> find(String id) {
    return kept().stream().filter(one -> one.id().text().equals(id)).findFirst();
  }

  /**
   * Writes down a new one, inside the caller's transaction.
   *
   * @throws IllegalStateException outside a transaction
   */
  void add(Vial vial, AccountId by, Instant at);

  /** Writes an addendum to one, inside the caller's transaction. */
  void amend(ClinicVial vial, AccountId by, Instant at, String reason);

  /** Writes down that one is kept no longer, inside the caller's transaction. */
  void finish(EntryId vial, AccountId by, Instant at, String reason);
}
