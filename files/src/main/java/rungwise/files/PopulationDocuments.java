package rungwise.files;

import java.util.List;
import java.util.Map;
import rungwise.clinic.populations.Origin;
import rungwise.clinic.populations.PopulationDocument;
import rungwise.clinic.populations.PopulationReader;
import rungwise.dosing.response.Population;
import rungwise.quantities.Reading;

/**
 * Populations as JSON, and those that come with the program. A document whose parameters are those
 * of one that comes with the program rests on what that one rests on, whatever it is called.
 */
public final class PopulationDocuments implements PopulationReader {

  private static final Map<String, Origin> ORIGINS =
      Map.of(
          ShippedPopulations.DEFAULT,
          Origin.PUBLISHED_SUMMARIES,
          ShippedPopulations.ASSUMED,
          Origin.ASSUMPTION);

  /** What a fit to the clinic's own courses says of itself. */
  static final String FITTED_HERE = "fitted_here";

  @Override
  public Reading<PopulationDocument> read(String document) {
    return switch (PopulationFile.read(document)) {
      case Reading.Refused<PopulationFile> refused -> new Reading.Refused<>(refused.faults());
      case Reading.Read<PopulationFile> read -> withoutDoubts(read.value());
    };
  }

  private Reading<PopulationDocument> withoutDoubts(PopulationFile file) {
    if (!file.doubts().isEmpty()) {
      return new Reading.Refused<>(
          file.doubts().stream()
              .map(doubt -> PopulationFile.DOUBTS + ": the fit is not to be signed: " + doubt)
              .toList());
    }
    return Reading.of(
        new PopulationDocument(
            file.population(), file.referencePreparation(), origin(file), file.assumed()));
  }

  private Origin origin(PopulationFile file) {
    return file.others().containsKey(FITTED_HERE)
        ? Origin.FITTED_HERE
        : originOf(file.population());
  }

  private Origin originOf(Population population) {
    return shipped().stream()
        .filter(
            one -> PopulationFile.read(one.document()).orThrow().population().equals(population))
        .findFirst()
        .map(one -> ORIGINS.getOrDefault(one.name(), Origin.BROUGHT_IN))
        .orElse(Origin.BROUGHT_IN);
  }

  @Override
  public List<Shipped> shipped() {
    return ShippedPopulations.names().stream()
        .map(name -> new Shipped(name, ShippedPopulations.document(name).orElseThrow()))
        .toList();
  }
}
