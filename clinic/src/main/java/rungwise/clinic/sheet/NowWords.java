package rungwise.clinic.sheet;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.day.MayInject;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.sheet.NowView.Sign;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.guard.Clears;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Place;
import rungwise.dosing.ladder.Ladder;

/** The answer to "may he inject now?" in words. */
record NowWords(ClinicTime time, Function<AccountId, String> names) {

  private static final String NOTHING_STOPS_HIM = "Nothing on record stops him.";

  /** The answer; with date and time where no other clock agrees with this one. */
  NowView of(MayInject answer, Clearance clearance, CourseState state) {
    NowView view = of(answer, clearance, state.question().ladder(), state.file());
    return state.clock() instanceof ClockBelief.NotCompared
        ? view.asked("Asked " + time.words(state.now()) + ", by a clock that is not compared.")
        : view;
  }

  private NowView of(MayInject answer, Clearance clearance, Ladder ladder, CourseFile file) {
    return switch (answer) {
      case MayInject.Yes yes -> yes(yes, ladder);
      case MayInject.NotBefore later -> waits("Not until " + time.words(later.at()) + ".", "");
      case MayInject.NotYet later -> notYet(later, clearance);
      case MayInject.LowerWaits lower ->
          waits(
              "Not until the lower dose is signed.",
              "Only "
                  + lower.signed()
                  + " is signed; the lower dose of "
                  + lower.lower()
                  + " waits for a signature.");
      case MayInject.Undecided undecided -> waits("Not until a prescriber has decided.", "");
      case MayInject.NotSigned notSigned -> waits("Not until a dose is signed.", "");
      case MayInject.Stopped stopped ->
          new NowView(
              Sign.STOPPED,
              words(stopped.why()),
              more(stopped.why(), clearance, file),
              Optional.empty());
    };
  }

  private static NowView yes(MayInject.Yes yes, Ladder ladder) {
    boolean isAtHome = yes.place() == Place.HOME;
    return new NowView(
        isAtHome ? Sign.YES : Sign.CLINIC_ONLY,
        (isAtHome ? "At home: " : "In the clinic only: ") + yes.signed(),
        NOTHING_STOPS_HIM
            + yes.higher()
                .map(
                    higher ->
                        " Only "
                            + yes.signed()
                            + " is signed; the higher dose of "
                            + higher
                            + " waits for a signature.")
                .orElse(""),
        Optional.of(ladder.dose(yes.signed())));
  }

  private NowView notYet(MayInject.NotYet later, Clearance clearance) {
    List<String> acts =
        clearance.blocks().stream()
            .map(Verdict::clears)
            .filter(Clears.When.class::isInstance)
            .map(clears -> ((Clears.When) clears).act())
            .distinct()
            .toList();
    String first = acts.isEmpty() ? "a prescriber has signed anew" : acts.getFirst();
    String more = acts.size() > 1 ? ", and what else stands here is done" : "";
    String time = later.at().map(at -> " Not before " + this.time.words(at) + ".").orElse("");
    return waits("Not until " + first + more + ".", time.strip());
  }

  private static NowView waits(String sentence, String then) {
    return new NowView(Sign.WAITS, sentence, then, Optional.empty());
  }

  private String more(MayInject.Why why, Clearance clearance, CourseFile file) {
    return switch (why) {
      case CLOCK_NOT_KNOWN ->
          "Nothing is injected until it is: "
              + clearance.blocks().stream()
                  .filter(verdict -> verdict.rule() == GuardRule.CLOCK_NOT_KNOWN)
                  .flatMap(verdict -> verdict.facts().stream())
                  .filter(Fact.Said.class::isInstance)
                  .map(fact -> ((Fact.Said) fact).value())
                  .collect(Collectors.joining("; "))
              + ".";
      case PAUSED, ENDED -> LifeWords.standing(file, time, names).orElse("");
      default -> "";
    };
  }

  private static String words(MayInject.Why why) {
    return switch (why) {
      case NOT_OVER -> "Stopped: it is not known to be over.";
      case NOT_REVIEWED -> "Stopped until a prescriber has reviewed the emergency.";
      case UNDER_OBSERVATION -> "Stopped while he is under observation.";
      case PAUSED -> "Stopped: his treatment is paused.";
      case ENDED -> "Stopped: his treatment has ended.";
      case RECORD_NOT_SOUND -> "Stopped: his record is not as it was written.";
      case CLOCK_NOT_KNOWN -> "Not known: it is not known what time it is.";
      case CHECK -> "Stopped by a safety check.";
    };
  }
}
