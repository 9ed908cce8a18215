package rungwise.checks.topics;

/** An input of a row that cannot be understood; the message says what was given. */
public final class InputFault extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final String reason;

  public InputFault(String reason) {
    super(reason);
    this.reason = reason;
  }

  /** What was given and why it cannot be understood. */
  public String reason() {
    return reason;
  }
}
