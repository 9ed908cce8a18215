package rungwise.dosing.guard;

/** How strongly a guard forbids. */
public enum GuardClass {
  /** No signature opens it. */
  HARD_STOP("not possible"),
  /** A prescriber may override it with a coded reason, or it clears with time. */
  HOLD("hold"),
  /** It is said and forbids nothing. */
  NOTE("note");

  private final String words;

  GuardClass(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
