package rungwise.dosing.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.Prospect;
import rungwise.dosing.response.ResponseModel;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Volume;

/**
 * Chooses by rule, and then holds or lowers what the rule proposes where the response model finds a
 * long erection more likely than the protocol allows. It never raises: every volume it may give is
 * the rule's own or a lower step.
 */
public record ByRuleAndModel(ResponseModel model) implements Choice {

  /** A report is flagged where fewer in 1000 lie as far to its side. */
  public static final Sourced<Integer> UNLIKELY_IN_1000 =
      new Sourced<>(10, new Source.Assumption("one report in 100 is flagged for nothing"));

  private static final double THOUSAND = 1000;

  @Override
  public String key() {
    return "by rule and model " + model.key();
  }

  @Override
  public Wanted choose(Question question) {
    Wanted byRule = ByRule.byReport(question);
    Wanted asked =
        byRule
            .proposed()
            .filter(volume -> question.protocol().chances().isAsked())
            .map(volume -> ask(question, byRule, volume))
            .orElse(byRule);
    return flag(question).map(asked::and).orElse(asked);
  }

  private Wanted ask(Question question, Wanted byRule, Volume proposed) {
    return prospect(question)
        .map(prospect -> within(question, prospect, byRule, proposed))
        .orElseGet(() -> byRule.without(new Decision.Refer(), ByRule.silent(proposed)));
  }

  /** What the whole history says of the preparation in use, if the population knows both. */
  public Optional<Prospect> prospect(Question question) {
    return prospect(question, question.history().injections());
  }

  private Optional<Prospect> prospect(Question question, List<Injection> counted) {
    return model.prospect(question.group(), question.preparation(), question.history(), counted);
  }

  /** What the rule wants with the model's word on it; that comes first where it changes it. */
  private static Wanted within(
      Question question, Prospect prospect, Wanted byRule, Volume proposed) {
    Protocol.Chances chances = question.protocol().chances();
    Forecast forecast = prospect.forecast(proposed);
    List<Fact> facts = facts(chances, proposed, forecast);
    if (isWithin(chances, forecast)) {
      return byRule.and(new Reason(TitrationRule.MODEL_AGREES, facts));
    }
    Optional<Volume> lower = question.ladder().below(proposed);
    while (lower.isPresent() && !isWithin(chances, prospect.forecast(lower.get()))) {
      lower = question.ladder().below(lower.get());
    }
    return lower
        .map(volume -> byRule.lowered(volume, new Reason(TitrationRule.MODEL_LOWERS, facts)))
        .orElseGet(
            () ->
                byRule.without(
                    new Decision.Refer(), new Reason(TitrationRule.MODEL_FORBIDS, facts)));
  }

  /** Whether no chance is above what a protocol allows. */
  public static boolean isWithin(Protocol.Chances chances, Forecast forecast) {
    return isWithin(chances.of120Minutes(), forecast.useful120())
        && isWithin(chances.of240Minutes(), forecast.useful240());
  }

  private static boolean isWithin(Optional<Sourced<Integer>> limit, double chance) {
    return limit.map(most -> chance * THOUSAND <= most.value()).orElse(true);
  }

  private static List<Fact> facts(Protocol.Chances chances, Volume volume, Forecast forecast) {
    var facts = new ArrayList<Fact>();
    facts.add(Fact.said("volume by rule", volume));
    chances
        .of120Minutes()
        .ifPresent(limit -> facts.add(fact("120 minutes or more", forecast.useful120(), limit)));
    chances
        .of240Minutes()
        .ifPresent(limit -> facts.add(fact("240 minutes or more", forecast.useful240(), limit)));
    return facts;
  }

  private static Fact fact(String what, double chance, Sourced<Integer> limit) {
    return Fact.said(
        "chance of " + what, inThousand(chance) + ", limit " + limit.value() + " in 1000");
  }

  /** Rounded up, so that what passes a limit is never printed as if it did not. */
  private static String inThousand(double chance) {
    return chance * THOUSAND < 1
        ? "less than 1 in 1000"
        : (long) Math.ceil(chance * THOUSAND) + " in 1000";
  }

  /**
   * What the earlier injections make of the last report, if that is very unlikely. A report of two
   * hours or more is never doubted.
   */
  private Optional<Reason> flag(Question question) {
    return question
        .last()
        .filter(last -> !last.closesVolume())
        .flatMap(
            last ->
                prospect(question, before(question, last))
                    .map(before -> before.chanceOfAsExtreme(question.history(), last))
                    .filter(chance -> chance * THOUSAND < UNLIKELY_IN_1000.value())
                    .map(chance -> unlikely(last, chance)));
  }

  private static List<Injection> before(Question question, Injection last) {
    return question.history().injections().stream().takeWhile(one -> !one.equals(last)).toList();
  }

  private static Reason unlikely(Injection last, double chance) {
    return new Reason(
        TitrationRule.REPORT_UNLIKELY,
        List.of(
            new Fact.Happened("last injection", last.at()),
            Fact.said("response", last.responseWords()),
            Fact.said("as far to that side", inThousand(chance))));
  }
}
