package rungwise.web.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.titration.SignDraft;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Overriding;
import rungwise.dosing.history.Place;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * The form that signs a dose.
 *
 * @param basis the number of the last entry that the page shows
 * @param holds the holds that a signature may override now; empty if there is none
 * @param until up to which day, where one of them asks for it
 * @param accepted up to how many minutes an erection may last at the dose, asked only while one
 *     that lasted over an hour holds it
 * @param isOpen whether it is shown unfolded, because it was sent and refused
 */
public record SignForm(
    long basis,
    Choice volume,
    Choice place,
    Choice changed,
    Optional<Choice> holds,
    Optional<Field> until,
    Optional<Field> accepted,
    Field reason,
    Choice nextStep,
    boolean isOpen) {

  static final String REASON = "signReason";

  /** The form for what the page shows; none where no step may be signed. */
  static Optional<SignForm> of(CourseView view) {
    List<CourseView.StepLine> allowed =
        view.steps().stream().filter(CourseView.StepLine::isAllowed).toList();
    if (allowed.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new SignForm(
            view.basis(),
            Choice.of(
                SignDraft.VOLUME, "Dose to sign", allowed.stream().map(SignForm::volume).toList()),
            Choice.of(SignDraft.PLACE, "Where he injects it", places()),
            Choice.of(SignDraft.CHANGED, "If it is not the proposed dose, why", changes()),
            holds(view),
            isRaised(view, rule -> rule.overriding() == Overriding.UNTIL_A_DATE)
                ? Optional.of(untilField())
                : Optional.empty(),
            isRaised(view, rule -> rule == GuardRule.SIGN_ANEW)
                ? Optional.of(acceptedField())
                : Optional.empty(),
            Field.of(Field.Kind.TEXT, REASON, "Reason in words")
                .withHint(
                    "Needed when a hold is overridden, more than an hour is accepted, or the reason"
                        + " is another one.")
                .whereSaid(),
            nextStepChoice(),
            /* isOpen= */ false));
  }

  /** The same as it was filled in, unfolded if it was sent. */
  SignForm asTyped(Typed typed) {
    return new SignForm(
        basis,
        volume.asTyped(typed),
        place.asTyped(typed),
        changed.asTyped(typed),
        holds.map(choice -> choice.asTyped(typed)),
        until.map(field -> field.asTyped(typed)),
        accepted.map(field -> field.asTyped(typed)),
        reason.asTyped(typed),
        nextStep.asTyped(typed),
        isOpen || typed.holds(SignDraft.VOLUME));
  }

  /** The same with each fault at its field. */
  SignForm withFaults(Faults faults) {
    return new SignForm(
        basis,
        volume.withFaults(faults),
        place.withFaults(faults),
        changed.withFaults(faults),
        holds.map(choice -> choice.withFaults(faults)),
        until.map(field -> field.withFaults(faults)),
        accepted.map(field -> field.withFaults(faults)),
        reason.withFaults(faults),
        nextStep.withFaults(faults),
        isOpen);
  }

  /**
   * Whether the proposed dose can be signed for a place with one tap: no hold is on it, and it is
   * not what is signed already. A dose that is signed for home is not moved to the clinic so.
   */
  public boolean isOneTap(CourseView view, Place where) {
    boolean isSigned =
        view.signed()
            .filter(signed -> !signed.isSuspended())
            .filter(signed -> signed.place() == where || signed.place() == Place.HOME)
            .filter(signed -> view.proposed().filter(signed.dose()::equals).isPresent())
            .isPresent();
    return view.proposed().isPresent()
        && !isSigned
        && (where == Place.CLINIC || view.homeBlocks().isEmpty())
        && view.verdicts().stream().noneMatch(verdict -> verdict.guardClass() != GuardClass.NOTE);
  }

  private static boolean isRaised(CourseView view, Predicate<GuardRule> asks) {
    return view.overridable().stream().map(CourseView.VerdictText::rule).anyMatch(asks);
  }

  private static Option volume(CourseView.StepLine step) {
    return new Option(
        Long.toString(step.dose().volume().microlitres()),
        step.dose().volumeAndMark(),
        step.dose().content() + (step.isProposed() ? " (proposed)" : ""),
        step.isProposed());
  }

  private static List<Option> places() {
    return Arrays.stream(Place.values())
        .map(place -> new Option(place.name(), place.words(), "", place == Place.CLINIC))
        .toList();
  }

  private static List<Option> changes() {
    var options = new ArrayList<Option>();
    options.add(new Option("", "it is the proposed dose", "", true));
    for (ChangeReason reason : ChangeReason.values()) {
      options.add(new Option(reason.name(), reason.words(), "", false));
    }
    return options;
  }

  private static Optional<Choice> holds(CourseView view) {
    List<Option> holds =
        view.overridable().stream()
            .map(one -> new Option(one.rule().name(), one.sentence(), holdsFor(one.rule()), false))
            .toList();
    return holds.isEmpty()
        ? Optional.empty()
        : Optional.of(Choice.of(SignDraft.OVERRIDDEN, "Override a hold", holds));
  }

  private static String holdsFor(GuardRule rule) {
    return switch (rule.overriding()) {
      case NEVER, WHILE_THE_SAME -> "";
      case IN_THE_CLINIC -> "For a dose in the clinic only.";
      case UNTIL_A_DATE -> "Up to the day below.";
    };
  }

  private static Field untilField() {
    return Field.of(Field.Kind.DATE, SignDraft.UNTIL, "Overridden up to and with")
        .withHint("For the holds above that ask for a day, within the protocol's grace.")
        .whereSaid();
  }

  private static Field acceptedField() {
    return Field.of(
            Field.Kind.COUNT,
            SignDraft.ACCEPTED,
            "Accept erections over an hour at this dose, up to minutes")
        .withHint(
            "From 61 to 119, with the reason below. One that lasts so long at this dose then does"
                + " not hold it again; a longer one, or one whose end nobody knows, does. Empty:"
                + " the hold is overridden this once.")
        .optional();
  }

  private static Choice nextStepChoice() {
    return Choice.of(
        SignDraft.NEXT_STEP,
        "At home, off unless you switch it on",
        List.of(
            new Option(
                "true",
                "the step above may follow without a new signature",
                "Only after a poor response to this dose, over within the hour, with nothing"
                    + " wrong; after a partial one as often in a row as the protocol waits for.",
                false)));
  }
}
