package rungwise.clinic.protocols;

import java.util.List;
import rungwise.dosing.known.Protocol;
import rungwise.quantities.Reading;

/** Port: reads protocol documents, and gives the samples that come with the program. */
public interface ProtocolReader {

  /** The protocol, or every fault of the document. */
  Reading<Protocol> read(String document);

  /** The sample documents. */
  List<String> samples();
}
