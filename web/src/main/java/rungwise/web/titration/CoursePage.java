package rungwise.web.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import rungwise.clinic.course.ChangeReason;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseView.ReasonLine;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Overriding;
import rungwise.dosing.history.Place;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.DoseLines;
import rungwise.web.page.DosePicture;
import rungwise.web.page.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.start.StartChoices;

/**
 * The course page.
 *
 * @param notice what was just done; may be empty
 * @param answer the largest line on the page
 * @param picture the drawn syringe of the proposed dose
 * @param drawings schedule, time line and places
 * @param checkFirst the last report, where the response model finds it very unlikely
 * @param sign the form that signs a dose, for a prescriber where one can be signed
 */
public record CoursePage(
    CourseView view,
    String path,
    String notice,
    Faults faults,
    String answer,
    Optional<DoseLines> dose,
    Optional<String> picture,
    CourseDrawings drawings,
    ForecastPart forecast,
    Optional<ReasonLine> checkFirst,
    Optional<SignForm> sign,
    boolean isPrescriber,
    boolean isClinical,
    Field reason,
    PlanForm plan,
    LiftingForms lifting) {

  /** The form that chooses another preparation, syringe or protocol. */
  public record PlanForm(Choice preparation, Choice barrel, Choice protocol, Field reason) {}

  /** The form that signs a dose. */
  public record SignForm(
      long basis,
      Choice volume,
      Choice place,
      Choice changed,
      Choice holds,
      Field until,
      Field reason,
      Choice nextStep) {

    /**
     * Whether the proposed dose can be signed for a place with one tap: no hold is on it, and it is
     * not what is signed already. A dose that is signed for home is not moved to the clinic so.
     */
    public boolean isOneTap(CourseView view, Place place) {
      boolean isSigned =
          view.signed()
              .filter(signed -> !signed.isSuspended())
              .filter(signed -> signed.place() == place || signed.place() == Place.HOME)
              .filter(signed -> view.proposed().filter(signed.dose()::equals).isPresent())
              .isPresent();
      return view.proposed().isPresent()
          && !isSigned
          && (place == Place.CLINIC || view.homeBlocks().isEmpty())
          && view.verdicts().stream().noneMatch(verdict -> verdict.guardClass() != GuardClass.NOTE);
    }

    /** Whether any hold could be overridden. */
    public boolean hasHolds() {
      return !holds.options().getFirst().value().isEmpty();
    }

    /** Whether a hold could be overridden that asks until when. */
    public boolean hasDated() {
      return holds.options().stream().anyMatch(option -> isDated(option.value()));
    }

    private static boolean isDated(String rule) {
      return !rule.isEmpty() && GuardRule.valueOf(rule).overriding() == Overriding.UNTIL_A_DATE;
    }
  }

  private static final String NO_HOLD = "";

  static CoursePage of(
      CourseView view, ForecastPart forecast, Account actor, StartChoices choices) {
    boolean isPrescriber = actor.may(Role.PRESCRIBER);
    boolean isClinical =
        isPrescriber || actor.may(Role.NURSE_EDUCATOR) || actor.may(Role.ON_CALL_CLINICIAN);
    return new CoursePage(
        view,
        "/courses/" + view.id(),
        "",
        Faults.NONE,
        answer(view),
        view.proposed().map(DoseLines::of),
        view.proposed().flatMap(dose -> DosePicture.svg(dose, "proposed")),
        CourseDrawings.of(view),
        forecast,
        view.reasons().stream().filter(CoursePage::isToCheckFirst).findFirst(),
        isPrescriber ? signForm(view) : Optional.empty(),
        isPrescriber,
        isClinical,
        Field.of(Field.Kind.TEXT, "reason", "Reason"),
        planForm(view, choices),
        LiftingForms.of(view.lifting(), choices));
  }

  private static boolean isToCheckFirst(ReasonLine reason) {
    return reason.sentence().equals(TitrationRule.REPORT_UNLIKELY.wording());
  }

  /** Every rule that spoke but the one that is said at the top. */
  public List<ReasonLine> reasons() {
    return view.reasons().stream().filter(reason -> !isToCheckFirst(reason)).toList();
  }

  CoursePage withNotice(String text) {
    return new CoursePage(
        view,
        path,
        text,
        faults,
        answer,
        dose,
        picture,
        drawings,
        forecast,
        checkFirst,
        sign,
        isPrescriber,
        isClinical,
        reason,
        plan,
        lifting);
  }

  CoursePage withLifting(UnaryOperator<LiftingForms> typed) {
    return new CoursePage(
        view,
        path,
        notice,
        faults,
        answer,
        dose,
        picture,
        drawings,
        forecast,
        checkFirst,
        sign,
        isPrescriber,
        isClinical,
        reason,
        plan,
        typed.apply(lifting));
  }

  CoursePage withFaults(List<String> found) {
    Faults all = new Faults(found.stream().map(Fault::ofForm).toList());
    return new CoursePage(
        view,
        path,
        notice,
        all,
        answer,
        dose,
        picture,
        drawings,
        forecast,
        checkFirst,
        sign,
        isPrescriber,
        isClinical,
        reason,
        plan,
        lifting);
  }

  private static String answer(CourseView view) {
    return view.decision() + view.proposed().map(dose -> ": " + dose.volume()).orElse("");
  }

  private static Optional<SignForm> signForm(CourseView view) {
    List<CourseView.StepLine> allowed =
        view.steps().stream().filter(CourseView.StepLine::isAllowed).toList();
    if (allowed.isEmpty()) {
      return Optional.empty();
    }
    List<Option> volumes =
        allowed.stream()
            .map(
                step ->
                    new Option(
                        Long.toString(step.dose().volume().microlitres()),
                        step.dose().volumeAndMark(),
                        step.dose().content() + (step.isProposed() ? " (proposed)" : ""),
                        step.isProposed()))
            .toList();
    List<Option> places =
        Arrays.stream(Place.values())
            .map(place -> new Option(place.name(), place.words(), "", place == Place.CLINIC))
            .toList();
    return Optional.of(
        new SignForm(
            view.basis(),
            Choice.of("volume", "Dose to sign", volumes),
            Choice.of("place", "Where he injects it", places),
            Choice.of("changed", "If it is not the proposed dose, why", changes()),
            Choice.of("overridden", "Override a hold", holds(view)),
            Field.of(Field.Kind.DATE, "until", "Overridden up to and with")
                .withHint("For the holds above that ask for a day, within the protocol's grace.")
                .optional(),
            Field.of(Field.Kind.TEXT, "reason", "Reason in words")
                .withHint("Needed when a hold is overridden or the reason is another one.")
                .optional(),
            nextStep()));
  }

  private static Choice nextStep() {
    return Choice.of(
        "nextStep",
        "At home, off unless you switch it on",
        List.of(
            new Option(
                "true",
                "the step above may follow without a new signature",
                "Only after a poor response to this dose, over within the hour, with nothing"
                    + " wrong; after a partial one as often in a row as the protocol waits for.",
                false)));
  }

  private static List<Option> changes() {
    var options = new ArrayList<Option>();
    options.add(new Option("", "it is the proposed dose", "", true));
    for (ChangeReason reason : ChangeReason.values()) {
      options.add(new Option(reason.name(), reason.words(), "", false));
    }
    return options;
  }

  private static List<Option> holds(CourseView view) {
    List<Option> holds =
        view.overridable().stream()
            .map(one -> new Option(one.rule(), one.sentence(), holdsFor(one.rule()), false))
            .toList();
    return holds.isEmpty() ? List.of(new Option(NO_HOLD, "none", "", false)) : holds;
  }

  private static String holdsFor(String rule) {
    return switch (GuardRule.valueOf(rule).overriding()) {
      case NEVER, WHILE_THE_SAME -> "";
      case IN_THE_CLINIC -> "For a dose in the clinic only.";
      case UNTIL_A_DATE -> "Up to the day below.";
    };
  }

  private static PlanForm planForm(CourseView view, StartChoices choices) {
    Plan now = view.running().plan();
    return new PlanForm(
        pick(
            "preparation",
            "Preparation",
            choices.preparations().get().stream()
                .map(one -> new Option(one.id().value(), one.name(), one.composition(), false))
                .toList(),
            now.preparation().value()),
        pick(
            "barrel",
            "Syringe",
            choices.barrels().get().stream()
                .map(barrel -> new Option(barrel.token(), barrel.words(), "", false))
                .toList(),
            now.barrel()),
        pick(
            "protocol",
            "Titration protocol",
            choices.protocols().get().stream()
                .map(signed -> signed.protocol())
                .map(one -> new Option(one.key(), one.title(), "version " + one.version(), false))
                .toList(),
            now.protocol() + " version " + now.protocolVersion()),
        Field.of(Field.Kind.TEXT, "reason", "Why")
            .withHint("Needed for another preparation.")
            .optional());
  }

  private static Choice pick(String name, String label, List<Option> options, String picked) {
    List<Option> shown =
        options.isEmpty() ? List.of(new Option("", "none yet", "", false)) : options;
    return Choice.of(name, label, shown).withPicked(Set.of(picked));
  }
}
