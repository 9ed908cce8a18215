package rungwise.web.call;

import rungwise.clinic.call.CallStage;

/** Which instruction of a call stands first. The script names each by its token. */
public enum CallView {
  /** Nothing was said yet: what 4 hours need is there already. */
  NOTHING_SAID("nothing-said"),
  EARLY("early"),
  LONG("long"),
  EMERGENCY("emergency"),

  /** Soft again before 4 hours. */
  SOFT("soft"),

  /** Soft again after 4 hours, or after nobody knows how many. */
  SOFT_LATE("soft-late");

  private final String token;

  CallView(String token) {
    this.token = token;
  }

  public String token() {
    return token;
  }

  static CallView of(CallStage stage, boolean isSoft) {
    return switch (stage) {
      case EARLY -> isSoft ? SOFT : EARLY;
      case LONG -> isSoft ? SOFT : LONG;
      case EMERGENCY -> isSoft ? SOFT_LATE : EMERGENCY;
    };
  }
}
