package rungwise.store.journal;

import java.io.IOException;
import java.util.Optional;
import rungwise.clinic.soundness.Flaw;
import rungwise.store.database.CannotOpenStore;
import rungwise.store.journal.EndFile.End;

/**
 * Keeps the end of the journal in its file, and knows whether the record still reaches as far.
 * While it does not, the file is left as it is: it is the only thing that knows.
 */
final class KeptEnd {

  private final Journal journal;
  private final EndFile file;
  private volatile Optional<Flaw> flaw;
  private volatile boolean isBehind = false;

  private KeptEnd(Journal journal, EndFile file, Optional<Flaw> flaw) {
    this.journal = journal;
    this.file = file;
    this.flaw = flaw;
  }

  /**
   * Compares the record with the file and goes on to keep it. A folder that has no such file is
   * new, restored, or of before: it begins one.
   *
   * @throws CannotOpenStore if the file is missing and cannot be made
   */
  static KeptEnd begin(Journal journal, EndFile file) {
    boolean isNew = !file.isThere();
    Optional<Flaw> flaw = isNew ? Optional.empty() : journal.missing(file.read());
    var kept = new KeptEnd(journal, file, flaw);
    if (isNew) {
      kept.make();
    } else if (flaw.isEmpty()) {
      kept.committed(journal.end());
    }
    return kept;
  }

  private void make() {
    try {
      file.make(journal.end());
    } catch (IOException e) {
      throw new CannotOpenStore(
          "The file "
              + EndFile.NAME
              + " of the data folder cannot be written: give the account that runs this program the"
              + " right to write there, and see whether the disk is full.",
          e);
    }
  }

  /** The record ends before what the file says, or the file is damaged; empty if neither. */
  Optional<Flaw> flaw() {
    return flaw;
  }

  /** Whether the file could not be written lately, so that a loss would not be told. */
  boolean isBehind() {
    return isBehind;
  }

  /** Writes down an end that was committed. What is saved is saved, also if this fails. */
  void committed(End end) {
    if (flaw.isPresent()) {
      return;
    }
    try {
      file.write(end);
      isBehind = false;
    } catch (IOException e) {
      isBehind = true;
    }
  }

  /** Takes the record as it is now for the whole one; somebody has said that it was meant. */
  void accept() {
    make();
    flaw = Optional.empty();
  }
}
