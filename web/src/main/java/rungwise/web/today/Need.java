package rungwise.web.today;

import rungwise.clinic.titration.CourseState;
import rungwise.dosing.decision.Decision;

/** What a course needs from somebody, the most worrying first. */
public enum Need {
  EMERGENCY("Emergency to review"),
  SUSPENDED("Signed dose suspended"),
  DECISION("Prescriber to decide"),
  SIGNATURE("Dose to sign"),
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

  static Need of(CourseState state) {
    if (!state.question().history().openEmergencies().isEmpty()) {
      return EMERGENCY;
    }
    var advice = state.advice();
    var signed = state.file().signedDose().map(written -> written.fact().volume());
    if (signed.filter(volume -> !advice.isAllowed(volume)).isPresent()) {
      return SUSPENDED;
    }
    return switch (advice.decision()) {
      case Decision.Pause pause -> DECISION;
      case Decision.Stop stop -> DECISION;
      case Decision.Refer refer -> DECISION;
      case Decision.Start start -> signed.isEmpty() ? SIGNATURE : NOTHING;
      case Decision.StepUp up -> SIGNATURE;
      case Decision.StepDown down -> SIGNATURE;
      case Decision.Repeat repeat ->
          signed.filter(repeat.volume()::equals).isPresent() ? NOTHING : SIGNATURE;
    };
  }
}
