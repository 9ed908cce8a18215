package rungwise.clinic.soundness;

/**
 * Something of the record that is not as it was written. Who meets one relies on nothing that rests
 * on it.
 *
 * @param entry the number of the entry that it is about, or of the first one after which something
 *     is missing
 * @param read what a seal of the entry would be if it had been written as it was read, where that
 *     can be said; else empty. It tells two changes of one entry apart.
 */
public record Flaw(What what, long entry, String read) {

  public Flaw(What what, long entry) {
    this(what, entry, "");
  }

  /** What is wrong. */
  public enum What {
    /** An entry of his does not have the seal with which it was written. */
    CHANGED("entry %d of his record was changed after it was written"),

    /** An entry of his is in no form that can be read; what it said is not shown. */
    UNREADABLE("entry %d of his record cannot be read"),

    /** Entries of his are missing, or are there that were never written. */
    NOT_ALL("his record does not have the entries that were written, up to entry %d"),

    /** Something that every course rests on: an account, a preparation, a protocol, a syringe. */
    SHARED("entry %d was changed: people, preparations or protocols are not as they were written"),

    /** An entry was removed from the record, put in, or moved. */
    CHAIN("the record of the clinic is broken at entry %d: entries were removed, added or moved"),

    /** The database file is damaged as a file, so that a reader may be led past a row. */
    FILE("the database file is damaged; %d entries in it were as they were written"),

    /** The record ends before an entry that had been saved. */
    CUT("the record ends before entry %d, which had been saved: it and all after it are lost"),

    /** The file that says where the record ended is damaged. */
    END_NOT_KNOWN(
        "it is not known whether the record ended with entry %d: the file that says so is damaged");

    private final String words;

    What(String words) {
      this.words = words;
    }
  }

  /** What is wrong, as a part of a sentence. */
  public String words() {
    return what.words.formatted(entry);
  }

  /** Whether it is of one course alone. */
  public boolean isOfCourse() {
    return what == What.CHANGED || what == What.UNREADABLE || what == What.NOT_ALL;
  }
}
