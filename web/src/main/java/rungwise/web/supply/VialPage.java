package rungwise.web.supply;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.supply.VialDraft;
import rungwise.clinic.supply.VialView;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The page of a man's vials.
 *
 * @param notice what was just done; may be empty
 * @param mayRecord whether the person may write a vial down
 * @param received the form of a new vial
 * @param isReceiving whether that form is shown unfolded
 * @param addendum the form of an addendum to the vial in use, if there is one
 * @param keeping the forms of what befell it
 */
public record VialPage(
    CourseView.Man man,
    String coursePath,
    String path,
    String notice,
    Faults faults,
    VialView view,
    boolean mayRecord,
    Fields received,
    boolean isReceiving,
    Optional<Addendum> addendum,
    Optional<KeepingForms> keeping) {

  /**
   * The fields of a vial.
   *
   * @param ordered strengths of the components of the order
   * @param others strengths of every other component
   * @param hasOther whether another component was typed
   */
  public record Fields(
      Field lot,
      List<Field> ordered,
      List<Field> others,
      boolean hasOther,
      Field made,
      Field beyondUse,
      Field opened,
      Field openedAt,
      Field daysInUse,
      Field device) {
    public Fields {
      ordered = List.copyOf(ordered);
      others = List.copyOf(others);
    }

    Fields withOrdered(List<Field> fields) {
      return new Fields(
          lot, fields, others, hasOther, made, beyondUse, opened, openedAt, daysInUse, device);
    }
  }

  /**
   * An addendum to the vial in use.
   *
   * @param isOpen whether its form is shown unfolded
   */
  public record Addendum(String path, boolean isOpen, Fields fields, Field reason) {}

  /**
   * What was typed and what is wrong with it.
   *
   * @param form the form that was sent
   */
  record Sent(VialForm form, Faults faults) {

    static final Sent NOTHING = new Sent(VialForm.empty(""), Faults.NONE);

    boolean is(String prefix) {
      return form.prefix().equals(prefix);
    }

    VialForm orElse(VialForm other) {
      return is(other.prefix()) ? form : other;
    }
  }

  static VialPage of(VialView view, CourseView course, Account actor, Sent sent) {
    String coursePath = "/courses/" + course.id();
    String path = coursePath + "/vial";
    return new VialPage(
        course.man(),
        coursePath,
        path,
        "",
        sent.faults(),
        view,
        By.CLINICIAN.includes(actor),
        fields(sent.orElse(VialForm.empty(VialForm.NEW)), view, sent.faults()),
        view.inUse().isEmpty() || sent.is(VialForm.NEW),
        view.inUse().map(line -> addendum(path, line, view, sent)),
        view.inUse().map(line -> KeepingForms.of(path, line, view.basis(), actor, sent)));
  }

  VialPage withNotice(String text) {
    return new VialPage(
        man,
        coursePath,
        path,
        text,
        faults,
        view,
        mayRecord,
        received,
        isReceiving,
        addendum,
        keeping);
  }

  private static Addendum addendum(String path, VialView.Line line, VialView view, Sent sent) {
    VialForm form = sent.orElse(VialForm.addendumTo(VialDraft.of(line.vial())));
    String reason = form.nameOf(CourseChanges.REASON);
    return new Addendum(
        path + "/" + line.entry(),
        sent.is(VialForm.ADDENDUM),
        fields(form, view, sent.faults()),
        Field.of(Field.Kind.TEXT, reason, "Reason")
            .withHint("Such as: opened today")
            .withValue(form.said(CourseChanges.REASON))
            .withFaults(sent.faults()));
  }

  private static Fields fields(VialForm form, VialView view, Faults faults) {
    return new VialFields(form, faults).of(view.components(), view.others());
  }
}
