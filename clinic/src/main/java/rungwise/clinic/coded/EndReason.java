package rungwise.clinic.coded;

/** Why the injection therapy of a man ends. */
public enum EndReason {
  NO_RESPONSE("it does not work well enough"),
  LONG_ERECTION("an erection lasted too long"),
  HARM("pain, scarring or another harm"),
  CONTRAINDICATION("it is not safe for him any more"),
  HIS_WISH("he does not want it any more"),
  RECOVERED("he no longer needs it"),
  OTHER_TREATMENT("another treatment takes its place"),
  TREATED_ELSEWHERE("he is treated elsewhere"),
  NOT_REACHED("he is not reached any more"),
  DIED("he has died"),
  OTHER("another reason, in words");

  private final String words;

  EndReason(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
