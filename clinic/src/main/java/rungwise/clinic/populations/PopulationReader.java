package rungwise.clinic.populations;

import java.util.List;
import rungwise.quantities.Reading;

/** Port: reads population documents, and gives those that come with the program. */
public interface PopulationReader {

  /** A document that comes with the program. */
  record Shipped(String name, String document) {}

  /** What a document says, or every fault of it. */
  Reading<PopulationDocument> read(String document);

  List<Shipped> shipped();
}
