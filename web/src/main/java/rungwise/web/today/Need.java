package rungwise.web.today;

import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.SoftAfter;

/** What a course needs from somebody, the most worrying first. */
public enum Need {
  EMERGENCY("Emergency to review"),
  CALL_BACK("Call back: still firm when last seen"),
  OBSERVATION("Under observation"),
  SUSPENDED("Signed dose suspended"),
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

  static Need of(CourseState state, CourseView view) {
    if (hasEmergency(state)) {
      return EMERGENCY;
    }
    if (view.around().callBack().isPresent()) {
      return CALL_BACK;
    }
    if (view.around().observing().isPresent()) {
      return OBSERVATION;
    }
    Need need = ofTheDose(state);
    return need == NOTHING && view.around().isExaminationDue() ? EXAMINATION : need;
  }

  /** One that is known to have lasted, or to be lasting, 4 hours; a call-back may tell more. */
  private static boolean hasEmergency(CourseState state) {
    return state.question().history().openEmergencies().stream()
        .map(Injection::soft)
        .anyMatch(soft -> !(soft instanceof SoftAfter.AtLeast) || soft.saysEmergency());
  }

  private static Need ofTheDose(CourseState state) {
    Advice advice = state.advice();
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

  /** Since when it waits: the injection that worries, or the last thing that was written. */
  Instant since(CourseState state) {
    CourseFile file = state.file();
    Instant last = file.entries().getLast().recordedAt();
    Optional<Instant> injected =
        switch (this) {
          case EMERGENCY, CALL_BACK ->
              file.reports().stream()
                  .map(CourseFile.Written::fact)
                  .map(InjectionReported::injectedAt)
                  .max(Comparator.naturalOrder());
          case OBSERVATION ->
              file.observing().stream()
                  .map(CourseFile.Written::fact)
                  .map(ObservationStarted::injectedAt)
                  .min(Comparator.naturalOrder());
          case SUSPENDED, DECISION, SIGNATURE, EXAMINATION, NOTHING -> Optional.empty();
        };
    return injected.orElse(last);
  }
}
