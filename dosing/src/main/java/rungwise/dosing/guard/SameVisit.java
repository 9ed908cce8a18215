package rungwise.dosing.guard;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Injection.Setting;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Whether the signed rule for a second dose in the same visit lets one follow now: of alprostadil
 * alone, the next step and no other, once the first has had its time, after a response that was too
 * little with nothing wrong.
 */
public final class SameVisit {

  /** From the first injection; also where somebody ended the observation sooner. */
  public static final Sourced<TimeSpan> WAIT =
      new Sourced<>(
          TimeSpan.ofMinutes(20),
          new Source.Assumption(
              "the upper end of the published onset of 5 to 20 min (US label); no text says how"
                  + " long to wait"));

  /** The longest visit, whatever a protocol says. */
  public static final Sourced<TimeSpan> WITHIN =
      new Sourced<>(TimeSpan.ofHours(1), Source.read(Citation.US_SYRINGE_LABEL, "2.1: within 1 h"));

  /** A dose up to which a second one may follow a partial response. */
  public static final Sourced<Mass> AFTER_PARTIAL_FROM =
      new Sourced<>(
          Mass.parseMicrograms("2.5").orThrow(),
          Source.read(Citation.US_SYRINGE_LABEL, "2.1: 2.5 to 5 mcg"));

  /** The dose that may follow it at most. */
  public static final Sourced<Mass> AFTER_PARTIAL_TO =
      new Sourced<>(
          Mass.parseMicrograms("5").orThrow(),
          Source.read(Citation.US_SYRINGE_LABEL, "2.1: 2.5 to 5 mcg"));

  private SameVisit() {}

  /**
   * The one step that may follow in this visit.
   *
   * @param first the first dose of the visit
   * @param from when it may be given at the earliest
   */
  public record Next(Injection first, Volume volume, Instant from) {}

  /** Whether a volume may follow at the question's instant. */
  public static boolean lets(Question question, Volume volume) {
    return next(question)
        .filter(next -> next.volume().equals(volume))
        .filter(next -> !next.from().isAfter(question.now()))
        .isPresent();
  }

  /** The step that may follow now or in a while, as long as the visit lasts. */
  public static Optional<Next> next(Question question) {
    List<Injection> today = TimeGuards.around(question);
    if (today.size() != 1 || !question.history().observing().isEmpty()) {
      return Optional.empty();
    }
    Injection first = today.getFirst();
    return question
        .protocol()
        .sameVisit()
        .filter(rule -> question.preparation().isOnly(Component.ALPROSTADIL))
        .filter(rule -> first.setting() == Setting.CLINIC_OBSERVED)
        .filter(rule -> first.preparation().isSameAs(question.preparation()))
        .filter(rule -> isWithin(rule, first, question.now()))
        .filter(rule -> first.wasTooLittle())
        .flatMap(rule -> step(rule, first, question))
        .filter(volume -> Together.ask(question, volume).isEmpty())
        .map(volume -> new Next(first, volume, WAIT.value().after(first.at())));
  }

  private static boolean isWithin(Protocol.SameVisit rule, Injection first, Instant now) {
    return !now.isBefore(first.at())
        && !TimeSpan.between(first.at(), now).isMoreThan(rule.within())
        && !TimeSpan.between(first.at(), now).isMoreThan(WITHIN.value());
  }

  /**
   * The next step above the first dose, if the response lets it follow. A draw above the order does
   * not move it, and what was drawn already is no step.
   */
  private static Optional<Volume> step(
      Protocol.SameVisit rule, Injection first, Question question) {
    Optional<Volume> above =
        question
            .ladder()
            .above(first.smallerOfDrawnAndOrdered())
            .filter(volume -> volume.isMoreThan(first.drawn()));
    return first.grade() == Grade.FIRM_NOT_USABLE
        ? above.filter(volume -> mayFollowPartial(rule, first, question.preparation(), volume))
        : above.filter(volume -> rule.afterNone());
  }

  private static boolean mayFollowPartial(
      Protocol.SameVisit rule, Injection first, Preparation preparation, Volume volume) {
    boolean isOfRule =
        rule.afterPartialUpTo()
            .flatMap(most -> most.in(preparation))
            .filter(most -> ExactVolume.of(first.drawn()).compareTo(most) <= 0)
            .isPresent();
    return isOfRule
        && isAtMost(preparation, first.drawn(), AFTER_PARTIAL_FROM.value())
        && isAtMost(preparation, volume, AFTER_PARTIAL_TO.value());
  }

  private static boolean isAtMost(Preparation preparation, Volume volume, Mass most) {
    return preparation
        .ingredient(Component.ALPROSTADIL)
        .filter(one -> !one.in(volume).isMoreThan(most))
        .isPresent();
  }
}
