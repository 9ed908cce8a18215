package rungwise.files;

import java.util.List;
import rungwise.clinic.protocols.ProtocolReader;
import rungwise.dosing.known.Protocol;
import rungwise.quantities.Reading;

/** Reads protocols from YAML and gives the samples that come with the program. */
public final class SampleProtocolReader implements ProtocolReader {

  @Override
  public Reading<Protocol> read(String document) {
    return ProtocolFile.read(document);
  }

  @Override
  public List<String> samples() {
    return SampleProtocols.documents();
  }
}
