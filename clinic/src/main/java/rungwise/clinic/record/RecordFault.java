package rungwise.clinic.record;

/** An entry that cannot be taken into the record; the message names it. */
public final class RecordFault extends RuntimeException {

  private static final long serialVersionUID = 1;

  public RecordFault(String message) {
    super(message);
  }

  public RecordFault(String message, Throwable cause) {
    super(message, cause);
  }

  /** A fault of one entry. */
  public static RecordFault of(long number, String what, Throwable cause) {
    return new RecordFault("entry " + number + ": " + what, cause);
  }
}
