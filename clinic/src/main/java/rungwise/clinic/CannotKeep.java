package rungwise.clinic;

/**
 * What was to be kept could not be written, such as on a full disk; the record is as it was before.
 * The message is for the person who looks after the machine.
 */
public final class CannotKeep extends RuntimeException {

  private static final long serialVersionUID = 1;

  public CannotKeep(String message, Throwable cause) {
    super(message, cause);
  }
}
