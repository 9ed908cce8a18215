package rungwise.dosing.decision;

import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.guard.OwnSources;
import rungwise.dosing.history.Question;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/** Gives each reason of a proposal the source of its own number. */
public final class ReasonSources {

  private ReasonSources() {}

  /** The same proposal; where the protocol gives a number, its source is the protocol's own. */
  public static Proposal of(Question question, Proposal proposal) {
    return new Proposal(
        proposal.decision(),
        proposal.reasons().stream()
            .map(
                one ->
                    one.citing(
                        OwnSources.forPreparation(own(question, one), question.preparation())))
            .toList());
  }

  private static Source own(Question question, Reason reason) {
    Protocol protocol = question.protocol();
    return switch (reason.rule()) {
      case FIRST_DOSE -> protocol.startFor(question.group()).source();
      case STEP_AFTER_NONE, STEP_AFTER_PARTIAL, STEP_AFTER_FULLER ->
          OwnSources.ofStep(question).orElse(reason.source());
      case PARTIAL_AGAIN ->
          protocol.more().afterPartial().map(Protocol.AfterPartial::source).orElse(reason.source());
      case SETTLED -> protocol.limits().satisfactory().source();
      case AT_MAXIMUM -> OwnSources.ofCeiling(question);
      case MODEL_LOWERS, MODEL_FORBIDS, MODEL_AGREES, MODEL_SILENT ->
          ofChances(protocol.chances()).orElse(reason.source());
      default -> reason.source();
    };
  }

  private static Optional<Source> ofChances(Protocol.Chances chances) {
    return Stream.of(chances.of120Minutes(), chances.of240Minutes())
        .flatMap(Optional::stream)
        .map(Sourced::source)
        .findFirst();
  }
}
