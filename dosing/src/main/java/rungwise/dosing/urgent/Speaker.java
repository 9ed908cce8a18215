package rungwise.dosing.urgent;

/** Whose word something is. */
public enum Speaker {
  HE("he"),
  SOMEBODY_WITH_HIM("somebody with him"),
  CLINICIAN("a clinician");

  private final String words;

  Speaker(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
