package rungwise.clinic.fitting;

/** Port: writes a fit as a document that {@code PopulationReader} reads. */
@FunctionalInterface
public interface FitWriter {

  /** The document, which says that it was fitted here and from which courses. */
  String write(FitResult result);
}
