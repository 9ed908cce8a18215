package rungwise.web.formulary;

import java.util.List;
import java.util.Set;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.dosing.known.SamplePreparations;
import rungwise.web.page.Fault;
import rungwise.web.page.Faults;

/**
 * The list of preparations.
 *
 * @param samples published compositions that the clinic does not keep yet
 */
public record PreparationsPage(
    String notice, Faults faults, List<Row> rows, List<Row> samples, boolean mayChange) {

  /** One preparation. */
  public record Row(String name, String composition, String form, String ceiling, String path) {}

  public PreparationsPage {
    rows = List.copyOf(rows);
    samples = List.copyOf(samples);
  }

  static PreparationsPage of(Formulary formulary, Account actor) {
    Set<String> kept = FormularyController.keptNames(formulary);
    return new PreparationsPage(
        "",
        Faults.NONE,
        formulary.list().stream()
            .map(one -> one.preparation())
            .map(
                one ->
                    new Row(
                        one.name(),
                        one.composition(),
                        one.form().words(),
                        one.ceiling().toString(),
                        "/preparations/" + one.id()))
            .toList(),
        SamplePreparations.all().stream()
            .filter(one -> !kept.contains(one.name()))
            .map(
                one ->
                    new Row(
                        one.name(),
                        one.composition(),
                        one.form().words(),
                        one.ceiling().toString(),
                        "/preparations/samples/" + one.id()))
            .toList(),
        mayChange(actor));
  }

  static boolean mayChange(Account actor) {
    return actor.may(Role.PRESCRIBER) || actor.may(Role.PROGRAMME_LEAD);
  }

  PreparationsPage withNotice(String text) {
    return new PreparationsPage(text, faults, rows, samples, mayChange);
  }

  PreparationsPage withFaults(List<String> found) {
    return new PreparationsPage(
        notice, new Faults(found.stream().map(Fault::ofForm).toList()), rows, samples, mayChange);
  }
}
