package rungwise.web.titration;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.course.Plan;
import rungwise.clinic.joining.Joining;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseView.ReasonLine;
import rungwise.dosing.decision.TitrationRule;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.DoseLines;
import rungwise.web.page.DosePicture;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;

/**
 * The course page.
 *
 * @param notice what was just done; may be empty
 * @param sent the form of the page that was refused, as typed; nothing if none was
 * @param answer the largest line on the page
 * @param picture the drawn syringe of the proposed dose
 * @param drawings schedule, time line and places
 * @param checkFirst the last report, where the response model finds it very unlikely
 * @param same whether another course is, or may be, of the same man
 * @param sign the form that signs a dose, for a prescriber where one can be signed
 */
public record CoursePage(
    CourseView view,
    String path,
    String notice,
    Faults faults,
    Typed sent,
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
    LiftingForms lifting,
    Joining.Standing same) {

  /** The form that chooses another preparation, syringe or protocol. */
  public record PlanForm(Choice preparation, Choice barrel, Choice protocol, Field reason) {

    PlanForm asTyped(Typed typed) {
      return new PlanForm(
          preparation.asTyped(typed),
          barrel.asTyped(typed),
          protocol.asTyped(typed),
          reason.asTyped(typed));
    }

    PlanForm withFaults(Faults faults) {
      return new PlanForm(
          preparation.withFaults(faults),
          barrel.withFaults(faults),
          protocol.withFaults(faults),
          reason.withFaults(faults));
    }
  }

  static final String REOPEN_REASON = "reopenReason";
  static final String PLAN_REASON = "planReason";

  static CoursePage of(
      CourseView view,
      ForecastPart forecast,
      Joining.Standing same,
      Account actor,
      StartChoices choices) {
    boolean isPrescriber = actor.may(Role.PRESCRIBER);
    boolean isClinical =
        isPrescriber || actor.may(Role.NURSE_EDUCATOR) || actor.may(Role.ON_CALL_CLINICIAN);
    return new CoursePage(
        view,
        "/courses/" + view.id(),
        "",
        Faults.NONE,
        Typed.NOTHING,
        answer(view),
        view.proposed().map(DoseLines::of),
        view.proposed().flatMap(dose -> DosePicture.svg(dose, "proposed")),
        CourseDrawings.of(view),
        forecast,
        view.reasons().stream().filter(CoursePage::isToCheckFirst).findFirst(),
        isPrescriber ? SignForm.of(view) : Optional.empty(),
        isPrescriber,
        isClinical,
        Field.of(Field.Kind.TEXT, REOPEN_REASON, "Reason"),
        planForm(view, choices),
        LiftingForms.of(view.lifting(), choices),
        same);
  }

  private static boolean isToCheckFirst(ReasonLine reason) {
    return reason.rule() == TitrationRule.REPORT_UNLIKELY;
  }

  /** Every rule that spoke but the one that is said at the top. */
  public List<ReasonLine> reasons() {
    return view.reasons().stream().filter(reason -> !isToCheckFirst(reason)).toList();
  }

  CoursePage withNotice(String text) {
    return with(text, faults, Typed.NOTHING);
  }

  /** The same after one of its forms was refused, with what was typed into it. */
  CoursePage refused(Typed typed, Faults found) {
    return with(notice, found, typed);
  }

  /** Whether the form to which a field belongs was sent and refused. */
  public boolean isRefused(Field field) {
    return sent.holds(field.name());
  }

  private CoursePage with(String said, Faults found, Typed typed) {
    return new CoursePage(
        view,
        path,
        said,
        found,
        typed,
        answer,
        dose,
        picture,
        drawings,
        forecast,
        checkFirst,
        sign.map(form -> form.asTyped(typed).withFaults(found)),
        isPrescriber,
        isClinical,
        reason.asTyped(typed).withFaults(found),
        plan.asTyped(typed).withFaults(found),
        lifting.asTyped(typed).withFaults(found),
        same);
  }

  private static String answer(CourseView view) {
    return view.decision() + view.proposed().map(dose -> ": " + dose.volume()).orElse("");
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
        Field.of(Field.Kind.TEXT, PLAN_REASON, "Why")
            .withHint("Needed for another preparation.")
            .whereSaid());
  }

  private static Choice pick(String name, String label, List<Option> options, String picked) {
    List<Option> shown =
        options.isEmpty() ? List.of(new Option("", "none yet", "", false)) : options;
    return Choice.of(name, label, shown).withPicked(Set.of(picked));
  }
}
