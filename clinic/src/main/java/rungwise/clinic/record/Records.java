package rungwise.clinic.record;

import java.util.function.Consumer;

/** Port: every entry of the record as it stands, whatever it is about. */
public interface Records {

  /** Whether nothing was ever written. */
  boolean isEmpty();

  /** All entries in the order of their numbers, of one moment. */
  void forEach(Consumer<RecordedEntry> each);

  /**
   * Appends an entry as it is, sealed anew, inside the caller's transaction.
   *
   * @throws RecordFault if it does not follow the one before it, or is not in the form of an entry
   */
  void append(RecordedEntry entry);

  /**
   * Reads everything that stands in the record through the same ways as the program does later.
   *
   * @throws RecordFault if anything cannot be read
   */
  void readAll();
}
