package rungwise.dosing.history;

/** Where a dose is ordered for. */
public enum Place {
  CLINIC("in the clinic"),
  HOME("at home");

  private final String words;

  Place(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
