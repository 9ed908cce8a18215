package rungwise.dosing.screening;

/** The answer to a safety question. What is not known counts as the unsafe answer. */
public enum Answer {
  YES("yes"),
  NO("no"),
  NOT_KNOWN("not known");

  private final String words;

  Answer(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
