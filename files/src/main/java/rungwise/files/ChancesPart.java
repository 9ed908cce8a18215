package rungwise.files;

import java.util.Optional;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Sourced;

/** The part of a protocol that limits what the response model may let pass. */
final class ChancesPart {

  private static final int MOST_IN_1000 = 999;

  private ChancesPart() {}

  /** In 1000, and at least one of the two; without the part the model is not asked. */
  static Optional<Protocol.Chances> read(Node node) {
    if (!node.isPresent()) {
      return Optional.of(Protocol.Chances.NOT_ASKED);
    }
    node.onlyWith("chance_of_120_minutes", "chance_of_240_minutes");
    Node of120 = node.at("chance_of_120_minutes");
    Node of240 = node.at("chance_of_240_minutes");
    if (!of120.isPresent() && !of240.isPresent()) {
      node.fault("must limit chance_of_120_minutes, chance_of_240_minutes or both");
    }
    return Optional.of(new Protocol.Chances(inThousand(of120), inThousand(of240)));
  }

  private static Optional<Sourced<Integer>> inThousand(Node node) {
    if (!node.isPresent()) {
      return Optional.empty();
    }
    node.onlyWith("in_1000", "source");
    var value = node.at("in_1000").wholeNumber(1, MOST_IN_1000);
    var source = ProtocolFile.source(node.at("source"));
    return value.flatMap(number -> source.map(found -> new Sourced<>(number, found)));
  }
}
