package rungwise.web.supply;

import java.util.Set;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.supply.BefellDraft;
import rungwise.clinic.supply.VialView;
import rungwise.dosing.supply.VialCare;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The forms of what befell the vial in use, and of its judgement.
 *
 * @param path where both are sent: what befell it, and its judgement
 * @param isOpen whether the first is shown unfolded
 * @param toJudge whether the second is shown
 * @param basis the number of the last entry that is shown
 */
public record KeepingForms(
    String path,
    boolean isOpen,
    Choice what,
    Field day,
    Field celsius,
    Field least,
    Field most,
    Field reason,
    boolean toJudge,
    long basis,
    Field judgement) {

  static KeepingForms of(
      String path, VialView.Line line, long basis, Account actor, VialPage.Sent sent) {
    VialForm form = sent.orElse(VialForm.empty(VialForm.BEFELL));
    VialForm judged = sent.orElse(VialForm.empty(VialForm.JUDGED));
    Faults faults = sent.faults();
    return new KeepingForms(
        path + "/" + line.entry(),
        sent.is(VialForm.BEFELL),
        what(form).withFaults(faults),
        field(form, Field.Kind.DATE, BefellDraft.DAY, "Since or on which day", faults)
            .withHint("If nobody knows, the first day on which it can have been."),
        field(form, Field.Kind.COUNT, BefellDraft.CELSIUS, "How warm at most, in \u00b0C", faults)
            .withHint("Of a warm vial. Leave it empty if nobody knows.")
            .optional(),
        field(form, Field.Kind.COUNT, BefellDraft.LEAST, "For how many hours at least", faults)
            .optional(),
        field(form, Field.Kind.COUNT, BefellDraft.MOST, "For how many hours at most", faults)
            .withHint("The same number twice if it is known; both empty if nobody knows.")
            .optional(),
        field(form, Field.Kind.TEXT, CourseChanges.REASON, "Who says so, and how", faults),
        line.care() != VialCare.AS_LABELLED && By.PRESCRIBER.includes(actor),
        basis,
        field(judged, Field.Kind.TEXT, CourseChanges.REASON, "Why it may be used", faults)
            .withHint("Such as: what the pharmacy answered, and who there."));
  }

  private static Choice what(VialForm form) {
    return Choice.of(
            form.nameOf(BefellDraft.WHAT),
            "What happened to it",
            BefellDraft.choices().entrySet().stream()
                .map(one -> new Option(one.getKey(), one.getValue(), "", /* picked= */ false))
                .toList())
        .withPicked(Set.of(form.said(BefellDraft.WHAT)));
  }

  private static Field field(
      VialForm form, Field.Kind kind, String name, String label, Faults faults) {
    return Field.of(kind, form.nameOf(name), label).withValue(form.said(name)).withFaults(faults);
  }
}
