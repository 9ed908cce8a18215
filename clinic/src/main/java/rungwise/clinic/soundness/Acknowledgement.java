package rungwise.clinic.soundness;

import java.util.List;

/**
 * One person's word that a changed entry was found as it is, and that the course goes on without
 * its proof. It holds for exactly that change of that entry, and only with another person's word.
 *
 * @param entry the number of the entry in which it is written
 * @param faulty the number of the entry that was changed
 * @param read what was read of it, as {@link Flaw#read()} says
 * @param by who wrote it
 */
public record Acknowledgement(long entry, long faulty, String read, String by, Side side) {

  /** As what somebody acknowledges: one of each side, and neither is the other. */
  public enum Side {
    /** Who treats him. */
    PRESCRIBER,
    /** Who answers for the record: the administrator or the programme lead. */
    KEEPER
  }

  public boolean isOf(Flaw flaw) {
    return flaw.what() == Flaw.What.CHANGED
        && flaw.entry() == faulty
        && flaw.read().equals(read)
        && !read.isEmpty();
  }

  private boolean completes(Acknowledgement other) {
    return other.faulty == faulty
        && other.read.equals(read)
        && other.side != side
        && !other.by.equals(by);
  }

  /** Whether two people have acknowledged a flaw. */
  public static boolean isComplete(List<Acknowledgement> all, Flaw flaw) {
    return all.stream()
        .filter(one -> one.isOf(flaw))
        .anyMatch(one -> all.stream().anyMatch(one::completes));
  }

  /** The number of the last entry by which a fault was acknowledged by both; 0 if none was. */
  public static long lastOf(List<Acknowledgement> all) {
    return all.stream()
        .filter(one -> all.stream().anyMatch(one::completes))
        .mapToLong(Acknowledgement::entry)
        .max()
        .orElse(0);
  }
}
