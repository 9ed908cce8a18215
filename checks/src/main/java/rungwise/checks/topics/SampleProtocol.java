package rungwise.checks.topics;

import java.util.Optional;
import java.util.Set;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Protocol;
import rungwise.dosing.known.ProtocolAmount;
import rungwise.files.ProtocolFile;
import rungwise.files.SampleProtocols;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;

/** The sample protocols that the product ships, by the label or the country that a row names. */
final class SampleProtocol {

  private static final String US_VIAL_AND_SYRINGE = "us-vial-syringe-label";

  /** What the rows call the label or the country of that protocol. */
  private static final Set<String> ITS_NAMES =
      Set.of("US", "syringe_2_2", "syringe", "vial", "vial_or_syringe_US");

  private SampleProtocol() {}

  /** The protocol for a row; none if the product ships none for that label or country. */
  static Optional<Protocol> of(String labelOrCountry) {
    return ITS_NAMES.contains(labelOrCountry) ? Optional.of(usVialAndSyringe()) : Optional.empty();
  }

  static Protocol usVialAndSyringe() {
    return SampleProtocols.documents().stream()
        .map(document -> ProtocolFile.read(document).orThrow())
        .filter(protocol -> protocol.name().equals(US_VIAL_AND_SYRINGE))
        .findFirst()
        .orElseThrow();
  }

  static Answer none(String labelOrCountry) {
    return new Answer.NotBuilt("no sample protocol for " + labelOrCountry);
  }

  static ProtocolAmount alprostadil(Input input, String name) {
    Mass mass = input.read(name, Mass::parseMicrograms);
    return new ProtocolAmount.Content(Component.ALPROSTADIL, mass);
  }

  /** The amount in mcg; a protocol for alprostadil alone counts in nothing else. */
  static Answer.OneNumber micrograms(ProtocolAmount amount) {
    return switch (amount) {
      case ProtocolAmount.Content content ->
          new Answer.OneNumber(Amounts.in(MassUnit.MICROGRAM, content.mass()));
      case ProtocolAmount.OfVolume volume ->
          throw new InputFault("the protocol counts in volumes: " + volume);
    };
  }
}
