package rungwise.checks.topics;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.files.ProtocolFile;
import rungwise.files.SampleProtocols;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;

/** The sample protocols that the product ships, by the label or the country that a row names. */
final class SampleProtocol {

  private static final String US_VIAL_AND_SYRINGE = "us-vial-syringe-label";

  /** What the rows call the label or the country of each protocol. */
  private static final Map<String, String> BY_NAME =
      Map.of(
          "US", US_VIAL_AND_SYRINGE,
          "syringe_2_2", US_VIAL_AND_SYRINGE,
          "syringe", US_VIAL_AND_SYRINGE,
          "vial", US_VIAL_AND_SYRINGE,
          "vial_or_syringe_US", US_VIAL_AND_SYRINGE,
          "cartridge", "us-cartridge-label",
          "cartridge_US", "us-cartridge-label",
          "UK", "uk-label",
          "alfadex_UK", "uk-label");

  private static final Map<String, Protocol> SHIPPED =
      SampleProtocols.documents().stream()
          .map(document -> ProtocolFile.read(document).orThrow())
          .collect(Collectors.toMap(Protocol::name, protocol -> protocol));

  private SampleProtocol() {}

  /** The protocol for a row; none if the product ships none for that label or country. */
  static Optional<Protocol> of(String labelOrCountry) {
    return Optional.ofNullable(BY_NAME.get(labelOrCountry)).map(SampleProtocol::shipped);
  }

  static Protocol usVialAndSyringe() {
    return shipped(US_VIAL_AND_SYRINGE);
  }

  private static Protocol shipped(String name) {
    return Objects.requireNonNull(SHIPPED.get(name), name);
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
