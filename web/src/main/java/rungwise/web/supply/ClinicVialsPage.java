package rungwise.web.supply;

import java.time.LocalDate;
import java.util.List;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.Vial;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.supply.ClinicVial;
import rungwise.clinic.supply.VialDraft;
import rungwise.dosing.supply.Opening;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The vials that the clinic keeps for injections at a visit.
 *
 * @param notice what was just done; may be empty
 * @param mayRecord whether the person may write a vial down
 * @param isReceiving whether the form of a new vial is shown unfolded
 */
public record ClinicVialsPage(
    String notice,
    Faults faults,
    List<Row> rows,
    boolean mayRecord,
    VialPage.Fields received,
    boolean isReceiving) {

  static final String PATH = "/clinic-vials";

  /**
   * One vial.
   *
   * @param opened when, and for how many days its label lets it be used then
   */
  public record Row(String path, String lot, String composition, String beyondUse, String opened) {}

  /**
   * The page of one vial.
   *
   * @param fields of an addendum
   * @param reason of an addendum
   * @param end why it is kept no longer
   */
  public record One(
      Faults faults, Row row, boolean mayRecord, VialPage.Fields fields, Field reason, Field end) {}

  public ClinicVialsPage {
    rows = List.copyOf(rows);
  }

  static ClinicVialsPage of(
      List<ClinicVial> kept, Account actor, String notice, VialForm form, Faults faults) {
    return new ClinicVialsPage(
        notice,
        faults,
        kept.reversed().stream().map(ClinicVialsPage::row).toList(),
        By.CLINICIAN.includes(actor),
        new VialFields(form, faults).ofAny(),
        kept.isEmpty() || !form.typed().isEmpty());
  }

  static One one(ClinicVial vial, Account actor, VialForm sent, Faults faults) {
    VialForm form = sent.typed().isEmpty() ? VialForm.addendumTo(VialDraft.of(vial.vial())) : sent;
    return new One(
        faults,
        row(vial),
        By.CLINICIAN.includes(actor),
        new VialFields(form, faults).ofAny(),
        reason(form, form.nameOf(CourseChanges.REASON), "Reason", "Such as: opened today", faults),
        reason(form, VialForm.END, "Why it is kept no longer", "Such as: used up", faults));
  }

  private static Field reason(
      VialForm form, String name, String label, String hint, Faults faults) {
    return Field.of(Field.Kind.TEXT, name, label)
        .withHint(hint)
        .withValue(form.typed().getOrDefault(name, ""))
        .withFaults(faults);
  }

  private static Row row(ClinicVial one) {
    Vial vial = one.vial();
    LocalDate label = vial.dates().beyondUse();
    return new Row(
        PATH + "/" + one.id(),
        vial.lot(),
        vial.composition(),
        ClinicTime.words(label),
        vial.dates().opened().map(ClinicVialsPage::words).orElse("not yet")
            + vial.dates()
                .daysInUse()
                .map(days -> ", good for " + days + " days once opened")
                .orElse(""));
  }

  private static String words(Opening opening) {
    return ClinicTime.words(opening.day())
        + opening.clock().map(clock -> " " + ClinicTime.clockText(clock)).orElse("");
  }
}
