package rungwise.dosing.source;

/** How a published value was seen when it was written down here. */
public enum Seen {
  READ("read"),
  READ_IN_SECONDARY_COPY("read in a secondary copy"),
  FROM_MEMORY("from memory, to be checked against the text"),
  DERIVED("worked out from a published value");

  private final String words;

  Seen(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
