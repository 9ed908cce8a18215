package rungwise.app.server;

/**
 * The program was used wrongly or given bad input. The message says what was given, what is
 * accepted and what to do; the exit status is 2.
 */
public final class WrongUse extends RuntimeException {

  private static final long serialVersionUID = 1;

  public WrongUse(String message) {
    super(message);
  }

  public WrongUse(String message, Throwable cause) {
    super(message, cause);
  }
}
