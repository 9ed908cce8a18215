package rungwise.files;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.protocols.EarlierProtocol;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Composition;
import rungwise.dosing.protocol.Floor;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.protocol.ProtocolOptions;
import rungwise.dosing.source.Sourced;

/** What the parts of a document say, each on its own, before a protocol is made of them. */
record ProtocolParts(
    Head head,
    Set<Component> components,
    List<Protocol.Start> starts,
    List<Protocol.Step> steps,
    List<Protocol.StrengthRule> strengths,
    Sourced<ProtocolAmount> ceiling,
    Protocol.Limits limits,
    ProtocolOptions more) {

  /** The sample in volumes that could be signed before a composition was asked for. */
  private static final Head MIXTURE_SAMPLE =
      new Head("cautious-mixture", 1, "Mixture of three drugs, cautious", /* sample= */ true);

  /** What it is called. */
  record Head(String name, int version, String title, boolean sample) {
    boolean isVersionOf(Head other) {
      return sample == other.sample && version == other.version && name.equals(other.name);
    }
  }

  /** Whether its amounts are volumes and nothing says of what. */
  boolean lacksComposition() {
    return ceiling.value() instanceof ProtocolAmount.OfVolume && more.composition().isEmpty();
  }

  Floor.Rules rules() {
    return new Floor.Rules(components, limits, more.sameVisit());
  }

  /** The protocol, with each floor in the place of what passes it. */
  EarlierProtocol protocol() {
    Floor.Rules held = rules().held();
    return new EarlierProtocol(
        new Protocol(
            head.name(),
            head.version(),
            head.title(),
            head.sample(),
            components,
            starts,
            steps,
            strengths,
            ceiling,
            held.limits(),
            more.withSameVisit(held.sameVisit()).withComposition(composition())),
        rules().passed(),
        lacksComposition());
  }

  /**
   * The sample named 30/1/10 beside its numbers; no other document says what it was written for.
   */
  private Optional<Composition> composition() {
    return lacksComposition() && head.isVersionOf(MIXTURE_SAMPLE)
        ? Optional.of(Composition.of(SamplePreparations.THREE_DRUG))
        : more.composition();
  }
}
