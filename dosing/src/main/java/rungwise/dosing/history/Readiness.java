package rungwise.dosing.history;

/** What must be on record before a man injects at home. */
public enum Readiness {
  TEACH_BACK("he has shown that he can draw up and inject"),
  SUPERVISED_INJECTION("he or his partner has injected once under supervision"),
  EMERGENCY_PLAN("hospital, after-hours number and transport are agreed");

  private final String words;

  Readiness(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
