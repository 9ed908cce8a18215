package rungwise.dosing.protocol;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.source.Sourced;

/**
 * What a protocol may leave out.
 *
 * @param from the first day on which a course may begin to run by it; empty means that it holds
 *     from its signature
 * @param careAbove above it a man with a heart condition needs particular care
 * @param componentLimits the most of single components, whatever the volume; none twice
 * @param sameVisit when a second dose may follow in the same visit; empty means never
 * @param emergencyPlan what the emergency plan must say beside hospital, number and transport
 * @param chances the most chance of a long response that the response model may leave; empty means
 *     that it is not asked
 * @param afterPartial how a partial response is answered; empty means by a step up after each
 * @param composition what one mL holds; a protocol in volumes without it, as they were signed
 *     before, holds for no preparation
 */
public record ProtocolOptions(
    Optional<LocalDate> from,
    Optional<Sourced<ProtocolAmount>> careAbove,
    List<Protocol.ComponentLimit> componentLimits,
    Optional<Protocol.SameVisit> sameVisit,
    List<Sourced<String>> emergencyPlan,
    Protocol.Chances chances,
    Optional<Protocol.AfterPartial> afterPartial,
    Optional<Composition> composition) {

  public static final ProtocolOptions NONE =
      new ProtocolOptions(
          Optional.empty(),
          Optional.empty(),
          List.of(),
          Optional.empty(),
          List.of(),
          Protocol.Chances.NOT_ASKED,
          Optional.empty(),
          Optional.empty());

  public ProtocolOptions {
    componentLimits = List.copyOf(componentLimits);
    emergencyPlan = List.copyOf(emergencyPlan);
  }

  /** Whether a course may begin to run by it on a day. */
  public boolean holdsOn(LocalDate day) {
    return from.filter(day::isBefore).isEmpty();
  }

  public ProtocolOptions withFrom(Optional<LocalDate> other) {
    return new ProtocolOptions(
        other,
        careAbove,
        componentLimits,
        sameVisit,
        emergencyPlan,
        chances,
        afterPartial,
        composition);
  }

  public ProtocolOptions withCareAbove(Optional<Sourced<ProtocolAmount>> other) {
    return new ProtocolOptions(
        from, other, componentLimits, sameVisit, emergencyPlan, chances, afterPartial, composition);
  }

  public ProtocolOptions withComponentLimits(List<Protocol.ComponentLimit> other) {
    return new ProtocolOptions(
        from, careAbove, other, sameVisit, emergencyPlan, chances, afterPartial, composition);
  }

  public ProtocolOptions withSameVisit(Optional<Protocol.SameVisit> other) {
    return new ProtocolOptions(
        from, careAbove, componentLimits, other, emergencyPlan, chances, afterPartial, composition);
  }

  public ProtocolOptions withEmergencyPlan(List<Sourced<String>> other) {
    return new ProtocolOptions(
        from, careAbove, componentLimits, sameVisit, other, chances, afterPartial, composition);
  }

  public ProtocolOptions withChances(Protocol.Chances other) {
    return new ProtocolOptions(
        from,
        careAbove,
        componentLimits,
        sameVisit,
        emergencyPlan,
        other,
        afterPartial,
        composition);
  }

  public ProtocolOptions withAfterPartial(Optional<Protocol.AfterPartial> other) {
    return new ProtocolOptions(
        from, careAbove, componentLimits, sameVisit, emergencyPlan, chances, other, composition);
  }

  public ProtocolOptions withComposition(Optional<Composition> other) {
    return new ProtocolOptions(
        from, careAbove, componentLimits, sameVisit, emergencyPlan, chances, afterPartial, other);
  }
}
