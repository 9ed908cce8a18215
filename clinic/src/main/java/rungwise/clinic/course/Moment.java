package rungwise.clinic.course;

/** What was seen at a time of an observation. */
public enum Moment {
  CHECKED("checked"),
  FIRST_FIRM("first firm"),
  USABLE("usable"),
  FULLY_SOFT("fully soft");

  private final String words;

  Moment(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
