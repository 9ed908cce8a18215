package rungwise.web.beside;

import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.sheet.CourseView;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;
import rungwise.web.titration.CourseDrawings;

/**
 * The plan of a course: its schedule step by step, why the advice is what it is, and the forms that
 * change the plan or open a closed dose.
 *
 * @param sent the form of the page that was refused, as typed; nothing if none was
 * @param reason why a closed dose is opened
 */
public record PlanPage(
    CourseView view,
    CourseDrawings drawings,
    boolean isPrescriber,
    Faults faults,
    Typed sent,
    Field reason,
    PlanForm plan) {

  static final String REOPEN_REASON = "reopenReason";

  static PlanPage of(CourseView view, Account actor, StartChoices choices) {
    return new PlanPage(
        view,
        CourseDrawings.of(view),
        actor.may(Role.PRESCRIBER),
        Faults.NONE,
        Typed.NOTHING,
        Field.of(Field.Kind.TEXT, REOPEN_REASON, "Reason"),
        PlanForm.of(view.running().plan(), choices));
  }

  /** The same after one of its forms was refused, with what was typed into it. */
  PlanPage refused(Typed typed, Faults found) {
    return new PlanPage(
        view,
        drawings,
        isPrescriber,
        found,
        typed,
        reason.asTyped(typed).withFaults(found),
        plan.asTyped(typed).withFaults(found));
  }

  public String path() {
    return "/courses/" + view.id();
  }

  /** Whether the form to which a field belongs was sent and refused. */
  public boolean isRefused(Field field) {
    return sent.holds(field.name());
  }
}
