package rungwise.dosing.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Proposal;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.NewStock;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.PartialRow;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.ladder.Ladder;
import rungwise.quantities.Volume;

/**
 * Chooses by the last report alone, as every label does. The order of the questions is the order of
 * danger: emergency, two hours, one hour, unknown; only then how firm it was.
 *
 * <p>A protocol that limits the response model is not kept by it: where the rule leads to a dose, a
 * prescriber decides.
 */
public record ByRule() implements Choice {

  @Override
  public String key() {
    return "by rule";
  }

  @Override
  public Proposal choose(Question question) {
    Proposal byReport = byReport(question);
    return byReport
        .decision()
        .proposed()
        .filter(volume -> question.protocol().chances().isAsked())
        .map(volume -> referred(byReport, silent(volume)))
        .orElse(byReport);
  }

  /** The limits cannot be kept, because nobody can be asked. */
  static Reason silent(Volume volume) {
    return new Reason(TitrationRule.MODEL_SILENT, List.of(Fact.said("volume by rule", volume)));
  }

  /** A prescriber decides, for a reason that comes before those of the rule. */
  static Proposal referred(Proposal byRule, Reason reason) {
    var reasons = new ArrayList<Reason>();
    reasons.add(reason);
    reasons.addAll(byRule.reasons());
    return new Proposal(new Decision.Refer(), reasons);
  }

  /** What the last report leads to, whatever the protocol limits. */
  static Proposal byReport(Question question) {
    Optional<Proposal> forbidden = forbidden(question);
    if (forbidden.isPresent()) {
      return forbidden.get();
    }
    Optional<Injection> last = question.history().lastOf(question.preparationId());
    if (last.isEmpty()) {
      return first(question);
    }
    Step step = afterReport(question, last.get());
    var reason = new Reason(step.rule(), factsOf(question, last.get()));
    return onNewStock(question, last.get(), new Proposal(step.decision(), List.of(reason)));
  }

  private static Proposal first(Question question) {
    var start = new Decision.Start(question.entry());
    Reason reason =
        question
            .carried()
            .map(
                carried ->
                    new Reason(
                        TitrationRule.FIRST_DOSE_AFTER_CHANGE,
                        List.of(
                            Fact.said("preparation before", carried.from()),
                            Fact.said(
                                "last tolerated", carried.from().contentOf(carried.tolerated())))))
            .orElseGet(
                () ->
                    new Reason(
                        TitrationRule.FIRST_DOSE,
                        List.of(Fact.said("group", question.group().words()))));
    return new Proposal(start, List.of(reason));
  }

  /** What a new vial allows, if it is less than what the last report leads to. */
  private static Proposal onNewStock(Question question, Injection last, Proposal proposal) {
    Optional<Volume> restart = NewStock.restartAt(question).flatMap(question.ladder()::atOrBelow);
    boolean isTooMuch =
        restart.isPresent()
            && proposal
                .decision()
                .proposed()
                .filter(one -> one.isMoreThan(restart.get()))
                .isPresent();
    if (!isTooMuch) {
      return proposal;
    }
    Volume volume = restart.orElseThrow();
    Decision decision =
        volume.isLessThan(last.drawn())
            ? new Decision.StepDown(volume)
            : new Decision.Repeat(volume);
    var reasons = new ArrayList<Reason>();
    reasons.add(
        new Reason(
            TitrationRule.NEW_STOCK_RESTART,
            List.of(
                Fact.said("stock of the last dose", last.stock().freshness().words()),
                Fact.said("proven on fresh stock", volume))));
    reasons.addAll(proposal.reasons());
    return new Proposal(decision, reasons);
  }

  private record Step(TitrationRule rule, Decision decision) {}

  private static Optional<Proposal> forbidden(Question question) {
    return CourseGuards.ask(question).stream()
        .filter(Verdict::isHardStop)
        .findFirst()
        .map(ByRule::forbiddenBy);
  }

  private static Proposal forbiddenBy(Verdict verdict) {
    TitrationRule rule = ruleOf(verdict.rule());
    boolean waits =
        rule != TitrationRule.NOT_SAFE_TO_START && rule != TitrationRule.EMERGENCY_FIRST;
    Decision decision = waits ? new Decision.Pause() : new Decision.Stop();
    return new Proposal(decision, List.of(new Reason(rule, verdict.facts())));
  }

  private static TitrationRule ruleOf(GuardRule guard) {
    return switch (guard) {
      case EMERGENCY_OPEN, REPORT_UNFINISHED -> TitrationRule.EMERGENCY_FIRST;
      case PAST_LONG -> TitrationRule.LONG_BEFORE_RECORD;
      case PAST_OPEN -> TitrationRule.LAST_INJECTION_FIRST;
      case SCREENING_OPEN -> TitrationRule.SCREENING_FIRST;
      case DECISION_MISSING -> TitrationRule.DECISION_FIRST;
      case PROTOCOL_NOT_FOR -> TitrationRule.PROTOCOL_FIRST;
      case RECALLED -> TitrationRule.RECALL_FIRST;
      case UNDER_OBSERVATION -> TitrationRule.OBSERVATION_FIRST;
      default -> TitrationRule.NOT_SAFE_TO_START;
    };
  }

  private static Step afterReport(Question question, Injection report) {
    Ladder ladder = question.ladder();
    if (report.closesVolume()) {
      return down(
          ladder,
          report,
          TitrationRule.TWO_HOURS_OR_MORE,
          TitrationRule.TWO_HOURS_AT_LOWEST,
          new Decision.Stop());
    }
    if (report.soft().mayPass(DurationLimits.NO_HIGHER_DOSE.value())) {
      return report.grade().isUseful()
          ? down(
              ladder,
              report,
              TitrationRule.OVER_AN_HOUR,
              TitrationRule.OVER_AN_HOUR_AT_LOWEST,
              new Decision.Pause())
          : again(ladder, report, TitrationRule.LONG_BUT_NOT_USABLE);
    }
    if (report.forbidsHigherDose()) {
      return again(ladder, report, TitrationRule.DURATION_NOT_KNOWN);
    }
    if (report.grade().isUseful()) {
      boolean isPair = !question.history().sameStayBefore(report).isEmpty();
      return again(
          ladder, report, isPair ? TitrationRule.TWO_DOSES_TOGETHER : TitrationRule.SETTLED);
    }
    return afterPoorResponse(question, report);
  }

  private static Step afterPoorResponse(Question question, Injection report) {
    Ladder ladder = question.ladder();
    if (report.causes() != SimpleCauses.NONE_FOUND) {
      TitrationRule rule =
          report.causes() == SimpleCauses.NOT_ASKED
              ? TitrationRule.CAUSES_NOT_ASKED
              : TitrationRule.CAUSE_FOUND;
      return again(ladder, report, rule);
    }
    if (report.drawn().isLessThan(report.ordered())) {
      return again(ladder, report, TitrationRule.LESS_THAN_ORDERED);
    }
    Optional<Volume> next = ladder.above(report.smallerOfDrawnAndOrdered());
    if (next.isEmpty()) {
      return new Step(TitrationRule.AT_MAXIMUM, new Decision.Refer());
    }
    if (wasTooLongAtOrBelow(question, next.get())) {
      return new Step(TitrationRule.NEXT_STEP_TOO_LONG, new Decision.Refer());
    }
    if (!PartialRow.isEnough(question.history(), question.protocol())) {
      return again(ladder, report, TitrationRule.PARTIAL_AGAIN);
    }
    return new Step(stepRule(question, report.grade()), new Decision.StepUp(next.get()));
  }

  private static TitrationRule stepRule(Question question, Grade grade) {
    if (grade == Grade.NONE) {
      return TitrationRule.STEP_AFTER_NONE;
    }
    boolean countsPartials = question.protocol().partialResponsesBeforeStep() > 1;
    return countsPartials && grade == Grade.FULLER
        ? TitrationRule.STEP_AFTER_FULLER
        : TitrationRule.STEP_AFTER_PARTIAL;
  }

  private static boolean wasTooLongAtOrBelow(Question question, Volume volume) {
    return question.history().injections().stream()
        .filter(one -> one.isReachedBy(question.preparation(), volume))
        .anyMatch(one -> one.soft().mayPass(DurationLimits.NO_HIGHER_DOSE.value()));
  }

  private static Step down(
      Ladder ladder,
      Injection report,
      TitrationRule rule,
      TitrationRule atLowest,
      Decision otherwise) {
    return ladder
        .below(report.drawn())
        .map(volume -> new Step(rule, new Decision.StepDown(volume)))
        .orElse(new Step(atLowest, otherwise));
  }

  /** The same dose: what was drawn if that is a step, else what was ordered. */
  private static Step again(Ladder ladder, Injection report, TitrationRule rule) {
    Volume same = ladder.hasRung(report.drawn()) ? report.drawn() : report.ordered();
    Volume wanted = report.drawn().isMoreThan(report.ordered()) ? report.ordered() : same;
    boolean isLess = rule == TitrationRule.LESS_THAN_ORDERED;
    return ladder
        .atOrBelow(isLess ? report.ordered() : wanted)
        .map(volume -> new Step(rule, new Decision.Repeat(volume)))
        .orElse(new Step(rule, new Decision.Pause()));
  }

  private static List<Fact> factsOf(Question question, Injection report) {
    var facts = new ArrayList<Fact>();
    facts.add(new Fact.Happened("last injection", report.at()));
    facts.add(Fact.said("drawn", report.drawn()));
    if (!question.history().sameStayBefore(report).isEmpty()) {
      facts.add(Fact.said("in that visit in all", question.history().cumulative(report)));
    }
    facts.add(Fact.said("ordered", report.ordered()));
    facts.add(Fact.said("response", report.responseWords()));
    facts.add(Fact.said("simple causes", report.causes().words()));
    PartialRow.of(question.history(), question.protocol())
        .ifPresent(row -> facts.add(Fact.said("partial responses in a row at this dose", row)));
    return facts;
  }
}
