package rungwise.web.populations;

import java.util.ArrayList;
import java.util.List;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The form that brings in a population.
 *
 * @param document as it was pasted
 * @param fault what is wrong with the document; empty if nothing is
 */
public record BringInPage(Faults faults, Field name, String document, String fault) {

  /** The field of the name. */
  static final String NAME = "name";

  /** The field of the document. */
  static final String DOCUMENT = "document";

  static BringInPage of(String name, String document, List<String> faultsOfName, List<String> of) {
    var all = new ArrayList<Fault>();
    faultsOfName.forEach(text -> all.add(new Fault(NAME, text)));
    of.forEach(text -> all.add(new Fault(DOCUMENT, text)));
    var faults = new Faults(all);
    return new BringInPage(
        faults,
        Field.of(Field.Kind.TEXT, NAME, "What it is called here")
            .withHint("Small letters, digits and hyphens, such as our-men-2026.")
            .withValue(name)
            .withFaults(faults),
        document,
        faults.of(DOCUMENT));
  }
}
