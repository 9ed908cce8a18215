package rungwise.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;
import rungwise.clinic.protocols.EarlierProtocol;
import rungwise.clinic.protocols.ProtocolReader;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.Reading;

/** Protocols as YAML, read and written, and the samples that come with the program. */
public final class SampleProtocolReader implements ProtocolReader {

  private static final int LINE = 100;

  @Override
  public Reading<Protocol> read(String document) {
    return ProtocolFile.read(document);
  }

  @Override
  public Reading<EarlierProtocol> readSigned(String document) {
    return ProtocolFile.readSigned(document);
  }

  @Override
  public List<String> samples() {
    return SampleProtocols.documents();
  }

  @Override
  public Map<String, Object> parts(String document) {
    Object parts = YamlText.read(document).orThrow();
    if (!(parts instanceof Map<?, ?> map)) {
      throw new IllegalArgumentException("bug: a protocol that was not read before");
    }
    var named = new LinkedHashMap<String, Object>();
    map.forEach((key, value) -> named.put(String.valueOf(key), value));
    return named;
  }

  @Override
  public String document(Map<String, Object> parts) {
    return new Dump(
            DumpSettings.builder().setDefaultFlowStyle(FlowStyle.BLOCK).setWidth(LINE).build())
        .dumpToString(parts);
  }
}
