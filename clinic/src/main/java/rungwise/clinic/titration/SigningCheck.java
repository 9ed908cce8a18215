package rungwise.clinic.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Acceptance;
import rungwise.dosing.history.Place;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** The guards, asked once more when a dose is to be signed. */
final class SigningCheck {

  /** A report may make a long response more likely as well as less. */
  private static final String LIMITED =
      "The protocol limits the chance of a long erection, which is asked again after each report:"
          + " sign without a next step.";

  private SigningCheck() {}

  /** Every reason why the draft cannot be signed; empty if it can. */
  static List<Fault> faults(
      SignDraft draft,
      CourseState state,
      Volume volume,
      Optional<ChangeReason> changed,
      Overrides overrides) {
    Advice advice = state.advice();
    var faults = new ArrayList<Fault>();
    faults.addAll(nextStepFaults(draft, state, volume));
    CourseChanges.textFault(draft.reason(), CourseChanges.REASON).ifPresent(faults::add);
    var verdicts = new ArrayList<>(advice.courseVerdicts());
    verdicts.addAll(advice.verdictsOn(volume));
    if (draft.place() == Place.HOME) {
      verdicts.addAll(advice.homeVerdicts());
    }
    if (!advice.isAllowed(volume) && verdicts.stream().noneMatch(Verdict::isHardStop)) {
      faults.add(
          new Fault(
              SignDraft.VOLUME,
              volume + " is not a step of the schedule: choose one of its steps."));
    }
    faults.addAll(verdictFaults(draft, verdicts));
    boolean isProposed = advice.decision().proposed().equals(Optional.of(volume));
    if (!isProposed && changed.isEmpty()) {
      faults.add(
          new Fault(SignDraft.CHANGED, "This is not the proposed dose: choose why it is changed."));
    }
    faults.addAll(overrides.faults());
    faults.addAll(acceptingFaults(draft, advice.verdictsOn(volume)));
    boolean needsWords =
        !draft.overridden().isEmpty()
            || !draft.acceptedMinutes().isBlank()
            || changed.equals(Optional.of(ChangeReason.OTHER));
    if (needsWords && draft.reason().isBlank()) {
      faults.add(new Fault(CourseChanges.REASON, CourseChanges.REASON_MISSING));
    }
    return faults;
  }

  /** What no signature opens, and the holds that this one does not override. */
  private static List<Fault> verdictFaults(SignDraft draft, List<Verdict> verdicts) {
    var faults = new ArrayList<Fault>();
    verdicts.stream()
        .filter(Verdict::isHardStop)
        .map(verdict -> "Not possible: " + verdict.rule().wording())
        .map(Fault::ofForm)
        .forEach(faults::add);
    verdicts.stream()
        .filter(verdict -> verdict.rule().guardClass() == GuardClass.HOLD)
        .map(Verdict::rule)
        .filter(rule -> !draft.overridden().contains(rule))
        .map(rule -> "On hold: " + rule.wording() + " Override it with a reason, or choose again.")
        .map(text -> new Fault(SignDraft.OVERRIDDEN, text))
        .forEach(faults::add);
    return faults;
  }

  /** How long an erection may last at the dose; empty where nothing over an hour was accepted. */
  static Reading<Optional<TimeSpan>> accepted(SignDraft draft) {
    String typed = draft.acceptedMinutes();
    if (typed.isBlank()) {
      return Reading.of(Optional.empty());
    }
    Reading<TimeSpan> read = TimeSpan.parseMinutes(typed);
    return read.found().filter(upTo -> !Acceptance.isPossible(upTo)).isPresent()
        ? Reading.refused(
            "\""
                + typed.strip()
                + "\" minutes cannot be accepted at a dose: from 61 to 119 can, and 120 or more"
                + " close it.")
        : read.map(Optional::of);
  }

  /** Only what waits can be accepted. */
  private static List<Fault> acceptingFaults(SignDraft draft, List<Verdict> verdicts) {
    if (draft.acceptedMinutes().isBlank()) {
      return List.of();
    }
    var faults = new ArrayList<>(accepted(draft).at(SignDraft.ACCEPTED).placed());
    if (verdicts.stream().noneMatch(verdict -> verdict.rule() == GuardRule.SIGN_ANEW)) {
      faults.add(
          new Fault(
              SignDraft.ACCEPTED,
              "Nothing over an hour is on record at this dose, so there is nothing to accept: leave"
                  + " the minutes empty."));
    }
    return faults;
  }

  /** The step that would follow without a new signature, if one was asked for and there is one. */
  static Optional<Volume> nextStep(SignDraft draft, CourseState state, Volume volume) {
    return draft.withNextStep() ? state.question().ladder().above(volume) : Optional.empty();
  }

  private static List<Fault> nextStepFaults(SignDraft draft, CourseState state, Volume volume) {
    if (!draft.withNextStep()) {
      return List.of();
    }
    if (draft.place() != Place.HOME) {
      return ofNextStep("A next step is for home only: in the clinic each dose is signed.");
    }
    Optional<Volume> next = nextStep(draft, state, volume);
    if (next.isEmpty()) {
      return ofNextStep("There is no step above " + volume + ": sign without a next step.");
    }
    if (state.question().protocol().chances().isAsked()) {
      return ofNextStep(LIMITED);
    }
    return DoseGuards.askForNextStep(state.question(), volume, next.get()).stream()
        .filter(Verdict::isBlock)
        .map(verdict -> "Next step " + next.get() + ": " + verdict.rule().wording())
        .map(text -> new Fault(SignDraft.NEXT_STEP, text))
        .toList();
  }

  private static List<Fault> ofNextStep(String text) {
    return List.of(new Fault(SignDraft.NEXT_STEP, text));
  }

  /** The reason of that name; none if there is no such reason. */
  static Optional<ChangeReason> changeReason(String name) {
    return Arrays.stream(ChangeReason.values())
        .filter(reason -> reason.name().equals(name))
        .findFirst();
  }
}
