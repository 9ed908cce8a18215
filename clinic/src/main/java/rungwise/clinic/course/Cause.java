package rungwise.clinic.course;

/** Something that went wrong with an injection, so that its response says little of the dose. */
public enum Cause {
  NOT_WHOLE_DOSE("not the whole dose went in"),
  LEAK("it leaked"),
  BENT_NEEDLE("the needle bent"),
  UNDER_SKIN("it went under the skin"),
  BUBBLE("there was a bubble in the syringe"),
  NOT_AROUSED("he was not aroused"),
  VIAL_IN_DOUBT("the vial was warm, old or cloudy");

  private final String words;

  Cause(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
