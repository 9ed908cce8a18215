package rungwise.dosing.protocol;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.Published.Figure;
import rungwise.dosing.source.Source;
import rungwise.quantities.Mass;

/** The numbers of a protocol that its signer confirms singly, in the order of the document. */
public final class Unusual {

  private final Protocol protocol;

  /** By number, so that one that is past two things is ticked once and says both. */
  private final Map<String, ToConfirm> found = new LinkedHashMap<>();

  private Unusual(Protocol protocol) {
    this.protocol = protocol;
  }

  /** Those of a protocol; none if each number stays within the texts. */
  public static List<ToConfirm> in(Protocol protocol) {
    var unusual = new Unusual(protocol);
    unusual.starts();
    unusual.steps();
    unusual.past(
        "ceiling", protocol.ceiling().value(), Figure.MAXIMUM, protocol.ceiling().source());
    return List.copyOf(unusual.found.values());
  }

  private void starts() {
    for (AetiologyGroup group : AetiologyGroup.values()) {
      Protocol.Start start = protocol.startFor(group);
      Figure figure =
          group == AetiologyGroup.SPINAL_CORD
              ? Figure.START_AFTER_SPINAL_CORD_INJURY
              : Figure.START;
      past("start " + group.token(), start.amount(), figure, start.source());
    }
  }

  private void steps() {
    for (Protocol.Step step : protocol.steps()) {
      past("steps up to " + step.upTo(), step.smallest(), Figure.STEP, step.source());
    }
    for (ProtocolAmount from : beginnings()) {
      doubling(from);
    }
  }

  /** Where a schedule can begin. */
  private Set<ProtocolAmount> beginnings() {
    var amounts = new LinkedHashSet<ProtocolAmount>();
    protocol.starts().forEach(start -> amounts.add(start.amount()));
    protocol.strengths().forEach(rule -> amounts.add(rule.notBelow()));
    return amounts;
  }

  /** Walks up from an amount by every step that a schedule takes. */
  private void doubling(ProtocolAmount from) {
    ProtocolAmount amount = from;
    Optional<Protocol.Step> step = protocol.stepFrom(amount);
    while (step.isPresent() && !amount.isMoreThan(protocol.ceiling().value())) {
      ProtocolAmount added = step.get().smallest();
      if (added.isMoreThan(amount)) {
        note(
            "steps up to " + step.get().upTo() + ": " + added,
            "more than doubles a dose of " + amount,
            step.get().source());
      }
      amount = amount.plus(added);
      step = protocol.stepFrom(amount);
    }
  }

  private void past(String part, ProtocolAmount amount, Figure figure, Source cited) {
    alprostadil(amount)
        .flatMap(mass -> Published.passedBy(mass, figure, cited))
        .ifPresent(why -> note(part + ": " + amount, why, cited));
  }

  private void note(String number, String why, Source source) {
    found.merge(
        number,
        new ToConfirm(number, why, source),
        (one, other) ->
            one.why().contains(other.why())
                ? one
                : new ToConfirm(number, one.why() + ", and " + other.why(), source));
  }

  private Optional<Mass> alprostadil(ProtocolAmount amount) {
    return switch (amount) {
      case ProtocolAmount.Content(var component, var mass) ->
          Optional.of(mass).filter(one -> component == Component.ALPROSTADIL);
      case ProtocolAmount.OfVolume(var volume) ->
          protocol.composition().flatMap(said -> said.in(Component.ALPROSTADIL, volume));
    };
  }
}
