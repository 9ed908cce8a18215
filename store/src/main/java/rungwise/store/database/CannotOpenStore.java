package rungwise.store.database;

/** The data folder cannot be used; the message is for the person who started the program. */
public final class CannotOpenStore extends RuntimeException {

  private static final long serialVersionUID = 1;

  public CannotOpenStore(String message) {
    super(message);
  }

  public CannotOpenStore(String message, Throwable cause) {
    super(message, cause);
  }
}
