package rungwise.clinic.coded;

/** What shows that a yes of the screening was wrong. */
public enum ShownBy {
  TEST("a test or a measurement"),
  EXAMINATION("an examination"),
  WRONG_MAN("it was another man's answer");

  private final String words;

  ShownBy(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
