package rungwise.dosing.guard;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Volume;

/**
 * Where the number comes from that a verdict or a reason rests on: from the protocol, where the
 * protocol gives it, and never from a text about another preparation.
 */
public final class OwnSources {

  private OwnSources() {}

  /** The same verdicts, each with the source of its own number. */
  public static List<Verdict> of(Question question, List<Verdict> verdicts) {
    var cited = new ArrayList<Verdict>(verdicts.size());
    for (Verdict one : verdicts) {
      cited.add(one.citing(forPreparation(own(question, one), question.preparation())));
    }
    return Collections.unmodifiableList(cited);
  }

  /**
   * A source as it stands for a preparation. A text about alprostadil alone says nothing about a
   * mixture, so a number that a mixture takes over from it is an assumption.
   */
  public static Source forPreparation(Source source, Preparation preparation) {
    boolean isTakenOver =
        source instanceof Source.Published published
            && published.citation().isOfAlprostadilAlone()
            && !preparation.isOnly(Component.ALPROSTADIL);
    return isTakenOver ? takenOver((Source.Published) source) : source;
  }

  private static Source takenOver(Source.Published published) {
    String place = published.place().isEmpty() ? "" : ", " + published.place();
    return new Source.Assumption(
        "as for alprostadil alone (" + published.citation().reference() + place + ")");
  }

  /** The source of the maximum: of whichever limit of the protocol it is, else the clinic's. */
  public static Source ofCeiling(Question question) {
    Protocol protocol = question.protocol();
    Preparation preparation = question.preparation();
    Volume beyond = question.ladder().ceiling().plus(Volume.ofMicrolitres(1));
    boolean isProtocols =
        protocol
            .ceiling()
            .value()
            .in(preparation)
            .filter(most -> most.compareTo(ExactVolume.of(beyond)) < 0)
            .isPresent();
    return isProtocols
        ? protocol.ceiling().source()
        : protocol.componentLimits().stream()
            .filter(limit -> limit.isPassedBy(preparation, beyond))
            .map(Protocol.ComponentLimit::source)
            .findFirst()
            .orElse(GuardRule.ABOVE_CEILING.source());
  }

  private static Source own(Question question, Verdict verdict) {
    Protocol protocol = question.protocol();
    Protocol.Limits limits = protocol.limits();
    return switch (verdict.rule()) {
      case SCREENING_EXPIRED -> limits.screeningMonths().source();
      case READINESS_EXPIRED ->
          protocol.home().readinessMonths().map(Sourced::source).orElse(verdict.source());
      case SPACING -> limits.spacing().source();
      case WEEKLY_COUNT -> limits.inSevenDays().source();
      case PDE5_HOURS -> limits.pde5Hours().source();
      case ABOVE_TOLD -> limits.of(CountedOption.TAKEN_OVER_PERCENT).source();
      case SAME_VISIT ->
          protocol.sameVisit().map(Protocol.SameVisit::source).orElse(verdict.source());
      case CARE_ABOVE -> protocol.careAbove().map(Sourced::source).orElse(verdict.source());
      case ABOVE_CEILING -> ofCeiling(question);
      case MORE_THAN_ONE_STEP_UP -> ofStep(question).orElse(verdict.source());
      default -> verdict.source();
    };
  }

  /** The source of the step from the last dose, or from the first one where there is none. */
  public static Optional<Source> ofStep(Question question) {
    var from =
        question.last().map(Injection::smallerOfDrawnAndOrdered).orElse(question.ladder().first());
    return question.protocol().stepFrom(question.preparation(), from).map(Protocol.Step::source);
  }
}
