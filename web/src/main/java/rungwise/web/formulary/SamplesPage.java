package rungwise.web.formulary;

import java.util.List;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.people.Account;

/** The published compositions that the clinic never kept. */
public record SamplesPage(List<Row> rows, boolean mayChange) {

  /** One of them. */
  public record Row(String path, PreparationLine one) {}

  public SamplesPage {
    rows = List.copyOf(rows);
  }

  static SamplesPage of(Formulary formulary, Account actor) {
    return new SamplesPage(
        formulary.samples().stream()
            .map(one -> new Row("/preparations/samples/" + one.id(), PreparationLine.of(one)))
            .toList(),
        PreparationsPage.mayChange(actor));
  }
}
