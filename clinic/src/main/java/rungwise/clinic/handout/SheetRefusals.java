package rungwise.clinic.handout;

import java.util.Optional;
import rungwise.clinic.day.MayInject;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.history.Place;

/** Why no sheet is made of a course as it stands; the same makes one that was made not current. */
final class SheetRefusals {

  static final String NOT_SIGNED =
      "No dose is signed, so there is nothing that a sheet could say: sign one first.";

  private static final String CLINIC_ONLY =
      "The dose is signed for the clinic only, and a sheet is for home: sign a dose for home"
          + " first.";

  private SheetRefusals() {}

  /**
   * Why the signed dose is not to be used as it stands; empty if mere time is all that holds it.
   */
  static Optional<String> of(CourseState state) {
    if (!state.file().isSound()) {
      return Optional.of(
          "His record is not as it was written, so no sheet is made of it. Tell your administrator"
              + " now: a sound record has to be put back first.");
    }
    if (!state.clock().isKnown()) {
      return Optional.of(
          "It is not known what time it is, so no sheet is made: the top of the page says why, and"
              + " what to do.");
    }
    return of(MayInject.of(state, state.advice(), state.mayInject())).or(() -> ofPlace(state));
  }

  private static Optional<String> ofPlace(CourseState state) {
    return state
        .file()
        .signedDose()
        .filter(written -> written.fact().place() != Place.HOME)
        .map(written -> CLINIC_ONLY);
  }

  private static Optional<String> of(MayInject answer) {
    return switch (answer) {
      case MayInject.Yes yes -> Optional.empty();
      case MayInject.NotBefore later -> Optional.empty();
      case MayInject.NotSigned notSigned -> Optional.of(NOT_SIGNED);
      case MayInject.NotYet later ->
          Optional.of(
              "Somebody has to do something before he may inject again, so no sheet is made: the"
                  + " course says what.");
      case MayInject.LowerWaits lower ->
          Optional.of(
              "A lower dose than the signed one is proposed, so no sheet is made of the signed one:"
                  + " sign first.");
      case MayInject.Undecided undecided ->
          Optional.of("A prescriber has to decide first, so no sheet is made: decide, and sign.");
      case MayInject.Stopped stopped -> Optional.of(of(stopped.why()));
    };
  }

  private static String of(MayInject.Why why) {
    return switch (why) {
      case PAUSED -> "His treatment is paused, so no sheet is made until it is resumed.";
      case ENDED -> "His treatment has ended, so no sheet is made.";
      case NOT_OVER -> "An erection is not known to be over, so no sheet is made.";
      case NOT_REVIEWED ->
          "What may have been an emergency waits for a prescriber's review, so no sheet is made.";
      case UNDER_OBSERVATION ->
          "He is under observation, so no sheet is made until that has ended.";
      case RECORD_NOT_SOUND -> "His record is not as it was written, so no sheet is made of it.";
      case CLOCK_NOT_KNOWN -> "It is not known what time it is, so no sheet is made.";
      case CHECK ->
          "A safety check has stopped the signed dose, so no sheet is made: the course says which.";
    };
  }
}
