package rungwise.clinic.protocols;

import java.util.List;
import java.util.Map;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.Reading;

/** Port: reads protocol documents, and gives the samples that come with the program. */
public interface ProtocolReader {

  /** Of a document that is to be signed: the protocol, or every fault. */
  Reading<Protocol> read(String document);

  /** A document that was signed, with each floor in the place of what passes it. */
  Reading<EarlierProtocol> readSigned(String document);

  /** The sample documents. */
  List<String> samples();

  /** A document taken apart into maps, lists, texts, whole numbers and yes or no, as written. */
  Map<String, Object> parts(String document);

  /** The document that says these parts; whether they make a protocol, reading it tells. */
  String document(Map<String, Object> parts);
}
