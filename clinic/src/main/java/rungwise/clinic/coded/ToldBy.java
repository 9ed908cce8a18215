package rungwise.clinic.coded;

/** From what a dose is known that a man injects elsewhere. */
public enum ToldBy {
  LETTER("a letter or a record of the other clinic"),
  CALL("a call with the other clinic"),
  LABEL("the label of his vial or syringe"),
  HIS_WORD("his own word");

  private final String words;

  ToldBy(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
