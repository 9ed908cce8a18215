package rungwise.clinic.day;

/** What a course needs from somebody, the most worrying first. */
public enum Need {
  EMERGENCY("Emergency: 4 hours have passed, end not known"),
  FIRM("Firm when last seen, end not known"),
  END_NOT_KNOWN("Not known how it ended"),
  RECORD_NOT_SOUND("Record changed: rely on nothing in it"),
  EMERGENCY_OVER("Emergency over: review it"),
  OBSERVATION("Under observation"),
  SUSPENDED("Signed dose suspended"),
  FLAGGED("Flagged report for a prescriber"),
  DECISION("Waits for a prescriber"),
  SIGNATURE("Dose to sign"),
  EXAMINATION("Examination due"),
  NOTHING("Nothing now");

  private final String words;

  Need(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Whether somebody has to do something. */
  public boolean isWaiting() {
    return this != NOTHING;
  }

  /**
   * What its time is called: since when it waits, when he injected, or when something was written.
   */
  public String since(String time) {
    return switch (this) {
      case OBSERVATION, DECISION, SIGNATURE -> "since " + time;
      case EMERGENCY, FIRM, END_NOT_KNOWN, EMERGENCY_OVER, FLAGGED -> "injected " + time;
      case RECORD_NOT_SOUND, SUSPENDED, EXAMINATION, NOTHING -> "last entry " + time;
    };
  }

  /** Whether an erection is not known to be over. */
  public boolean isNotOver() {
    return this == EMERGENCY || this == FIRM || this == END_NOT_KNOWN;
  }
}
