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
  DECISION("Prescriber to decide"),
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

  /** Whether an erection is not known to be over. */
  public boolean isNotOver() {
    return this == EMERGENCY || this == FIRM || this == END_NOT_KNOWN;
  }
}
