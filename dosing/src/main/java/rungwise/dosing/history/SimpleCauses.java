package rungwise.dosing.history;

/**
 * Whether the simple causes of a poor response were asked about: whole dose delivered, no leak, no
 * bent needle, not under the skin, no bubble, aroused, vial cold and in date.
 */
public enum SimpleCauses {
  NOT_ASKED("not asked yet"),
  ONE_FOUND("something went wrong with this injection"),
  NONE_FOUND("asked, and nothing went wrong");

  private final String words;

  SimpleCauses(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
