package rungwise.clinic.callbook;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.AccountId;

/** Port: what the clinic keeps for calls. Everything is appended, and stays to be read. */
public interface CallBook {

  /** A protocol that a prescriber signed. */
  record Signed(int version, CallProtocol protocol, AccountId by, Instant at) {}

  /** A department on the list. */
  record Kept(EntryId entry, Department department, AccountId by, Instant at) {}

  /**
   * Somebody printed the page for when the server is down.
   *
   * @param edition the number of the last entry that it was made of
   */
  record Printed(long edition, AccountId by, Instant at) {}

  /** Every signed version, in their order. */
  List<Signed> signed();

  /** Signs the next version. */
  void sign(CallProtocol protocol, AccountId by, Instant at);

  /** The departments on the list, in the order in which they came. */
  List<Kept> departments();

  /** Adds one, or puts it in the place of an earlier entry. */
  void keep(Department department, Optional<EntryId> instead, AccountId by, Instant at);

  /** Takes one off the list. */
  void remove(EntryId entry, AccountId by, Instant at, String reason);

  /** The number of the last entry that a printed page is made of; 0 if there is none. */
  long edition();

  /** Every time that it was printed, in their order. */
  List<Printed> printed();

  /** Writes down that an edition was printed. */
  void print(long edition, AccountId by, Instant at);
}
