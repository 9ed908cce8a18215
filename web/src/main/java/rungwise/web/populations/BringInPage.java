package rungwise.web.populations;

import java.util.ArrayList;
import java.util.List;
import rungwise.clinic.populations.PopulationSheet;
import rungwise.clinic.populations.Populations;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The form that brings in a population.
 *
 * @param document as it was pasted
 * @param fault what is wrong with the document; empty if nothing is
 */
public record BringInPage(Faults faults, Field name, String document, String fault) {

  /** The field of the document. */
  static final String DOCUMENT = "document";

  /** All that is wrong with a name and with what was read of a document. */
  static Faults faults(List<Fault> ofName, Reading<PopulationSheet> sheet) {
    var all = new ArrayList<>(ofName);
    all.addAll(sheet.at(DOCUMENT).placed());
    return new Faults(all);
  }

  static BringInPage of(String name, String document, Faults faults) {
    return new BringInPage(
        faults,
        Field.of(Field.Kind.TEXT, Populations.NAME_FIELD, "What it is called here")
            .withHint("Small letters, digits and hyphens, such as our-men-2026.")
            .withValue(name)
            .withFaults(faults),
        document,
        faults.of(DOCUMENT));
  }
}
