package rungwise.app.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.protocols.EarlierProtocol;
import rungwise.dosing.protocol.Protocol;
import rungwise.files.SampleProtocolReader;

/** A protocol document, as one that is to be signed and as one that was. */
final class ProtocolFiles implements Target.Reader {

  private final SampleProtocolReader reader = new SampleProtocolReader();

  static List<String> seeds() {
    var seeds = new ArrayList<>(new SampleProtocolReader().samples());
    seeds.add("a: &a [*a]");
    seeds.add("? {a: b}\n: c");
    seeds.add("--- !!java/object x\n...\n---\n- 1");
    seeds.add("{protocol: \"x\", version: 1e3, sample: yes}");
    return seeds;
  }

  @Override
  public void read(byte[] input) {
    String text = new String(input, StandardCharsets.UTF_8);
    Optional<Protocol> toSign = Hold.sound(reader.read(text)).found();
    Optional<EarlierProtocol> signed = Hold.sound(reader.readSigned(text)).found();
    Hold.that(
        toSign.isEmpty() || signed.map(EarlierProtocol::protocol).equals(toSign),
        () -> "what may be signed is read otherwise once it is");
    signed.ifPresent(
        protocol -> {
          String written = reader.document(reader.parts(text));
          Hold.that(
              reader.readSigned(written).found().equals(signed),
              () -> "written as " + written + ", read as " + reader.readSigned(written));
        });
  }
}
