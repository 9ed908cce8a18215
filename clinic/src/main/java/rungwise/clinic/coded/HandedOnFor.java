package rungwise.clinic.coded;

/** Why a call stays open and is handed on. */
public enum HandedOnFor {
  REFUSES_HOSPITAL("he refuses to go to hospital"),
  NOT_REACHED("he is not reached"),
  SHIFT_ENDS("the shift ends");

  private final String words;

  HandedOnFor(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
