package rungwise.clinic.fitting;

/** Why a man's reports do not count, or not all of them. */
public enum LeftOut {
  NO_INJECTION("without any injection"),
  OTHER_GROUP("of an aetiology that was not chosen"),
  OTHER_DAYS("begun on other days, or on a day that is not known"),
  NOT_NAMED("with earlier injections of a preparation that is not named"),
  NOT_READ("with a response that was not usable and lasted more than an hour"),
  OTHER_PREPARATION(
      "that began with a preparation whose strength is not known exactly in relation to the"
          + " reference"),
  ONLY_BEFORE_CHANGE("that count only up to the change to such a preparation");

  private final String words;

  LeftOut(String words) {
    this.words = words;
  }

  /** What the courses are, after their number: "courses without any injection". */
  public String words() {
    return words;
  }
}
