package rungwise.clinic.coded;

/** What became of the vials that he had. */
public enum VialsLeft {
  RETURNED("returned"),
  DISCARDED("discarded"),
  NONE_LEFT("he had none"),
  NOT_KNOWN("not known");

  private final String words;

  VialsLeft(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
