package rungwise.clinic.populations;

import java.util.Set;
import rungwise.dosing.response.Population;

/**
 * What a document says.
 *
 * @param reference the id of the preparation whose strength is 1
 * @param origin what it rests on
 * @param assumed which of its parameters nobody has measured, by the names of {@link
 *     rungwise.dosing.fit.Priors}
 */
public record PopulationDocument(
    Population population, String reference, Origin origin, Set<String> assumed) {
  public PopulationDocument {
    assumed = Set.copyOf(assumed);
  }
}
