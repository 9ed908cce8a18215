package rungwise.clinic.coded;

/** What treats him after self-injection has ended. */
public enum AfterEnd {
  NOTHING("no treatment"),
  TABLETS("tablets"),
  VACUUM_DEVICE("a vacuum device"),
  URETHRAL("alprostadil into the urethra"),
  IMPLANT("assessment for an implant"),
  ELSEWHERE("treated elsewhere"),
  OTHER("something else, in words"),
  NOT_DECIDED("not decided yet");

  private final String words;

  AfterEnd(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Whether it is asked to whom he is referred. */
  public boolean isReferral() {
    return this == IMPLANT || this == ELSEWHERE;
  }
}
