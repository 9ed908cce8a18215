package rungwise.web.formulary;

import java.util.List;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;

/** The preparations that may be planned now. */
public record PreparationsPage(String notice, List<Row> rows, boolean mayChange) {

  /** One preparation. */
  public record Row(String path, PreparationLine one, String inUse) {}

  public PreparationsPage {
    rows = List.copyOf(rows);
  }

  static PreparationsPage of(Formulary formulary, Account actor, String notice) {
    return new PreparationsPage(
        notice, formulary.list().stream().map(PreparationsPage::row).toList(), mayChange(actor));
  }

  private static Row row(ClinicPreparation kept) {
    return new Row(
        "/preparations/" + kept.id(), PreparationLine.of(kept.preparation()), kept.inUse().words());
  }

  static boolean mayChange(Account actor) {
    return actor.may(Role.PRESCRIBER) || actor.may(Role.PROGRAMME_LEAD);
  }
}
