package rungwise.dosing.choice;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.NewStock;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.ladder.Beginning;
import rungwise.dosing.ladder.Carried;
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
  public Wanted choose(Question question) {
    Wanted byReport = byReport(question);
    return byReport
        .proposed()
        .filter(volume -> question.protocol().chances().isAsked())
        .map(volume -> byReport.without(new Decision.Refer(), silent(volume)))
        .orElse(byReport);
  }

  /** The limits cannot be kept, because nobody can be asked. */
  static Reason silent(Volume volume) {
    return new Reason(TitrationRule.MODEL_SILENT, List.of(Fact.said("volume by rule", volume)));
  }

  /** What the last report leads to, whatever the protocol limits. */
  static Wanted byReport(Question question) {
    return forbidden(question)
        .orElseGet(
            () ->
                onNewStock(
                    question,
                    question
                        .last()
                        .map(last -> new AfterReport(question, last).wanted())
                        .orElseGet(() -> first(question))));
  }

  private static Wanted first(Question question) {
    return switch (question.beginning()) {
      case Beginning.AsNew asNew ->
          begin(
              question,
              new Reason(
                  TitrationRule.FIRST_DOSE, List.of(Fact.said("group", question.group().words()))));
      case Beginning.AtMost(Carried carried) ->
          begin(
              question,
              new Reason(
                  TitrationRule.FIRST_DOSE_AFTER_CHANGE,
                  List.of(
                      Fact.said("preparation before", carried.from()),
                      Fact.said("last tolerated", carried.words()))));
      case Beginning.AsTold told ->
          begin(
              question,
              new Reason(
                  TitrationRule.FIRST_DOSE_AS_TOLD,
                  List.of(Fact.said("told from elsewhere", told.words()))));
      case Beginning.BelowTooLong tooLong ->
          Wanted.none(
              new Decision.Refer(),
              new Reason(
                  TitrationRule.NOTHING_TOLERATED_BEFORE,
                  List.of(Fact.said("too long, or not known how long", tooLong.words()))));
    };
  }

  private static Wanted begin(Question question, Reason reason) {
    return question
        .entry()
        .map(volume -> Wanted.dose(volume, reason))
        .orElseGet(
            () ->
                Wanted.none(new Decision.Refer(), reason)
                    .and(new Reason(TitrationRule.NO_STEP_AS_TOLERATED, reason.facts())));
  }

  /** What a new vial allows, if it is less than what the last report leads to. */
  private static Wanted onNewStock(Question question, Wanted wanted) {
    Optional<Volume> restart =
        NewStock.restartAt(question)
            .filter(most -> wanted.proposed().filter(one -> one.isMoreThan(most)).isPresent());
    if (restart.isEmpty()) {
      return wanted;
    }
    Injection last = question.history().last().orElseThrow();
    var reason =
        new Reason(
            TitrationRule.NEW_STOCK_RESTART,
            List.of(
                Fact.said("stock of the last dose", last.stock().freshness().words()),
                Fact.said("highest dose to begin this vial with", restart.get())));
    return question
        .ladder()
        .atOrBelow(restart.get())
        .map(volume -> wanted.lowered(volume, reason))
        .orElseGet(() -> wanted.without(new Decision.Refer(), reason));
  }

  private static Optional<Wanted> forbidden(Question question) {
    return CourseGuards.ask(question).stream()
        .filter(Verdict::isHardStop)
        .findFirst()
        .map(ByRule::forbiddenBy);
  }

  private static Wanted forbiddenBy(Verdict verdict) {
    TitrationRule rule = ruleOf(verdict.rule());
    boolean waits =
        rule != TitrationRule.NOT_SAFE_TO_START && rule != TitrationRule.EMERGENCY_FIRST;
    return Wanted.none(
        waits ? new Decision.Pause() : new Decision.Stop(), new Reason(rule, verdict.facts()));
  }

  private static TitrationRule ruleOf(GuardRule guard) {
    return switch (guard) {
      case EMERGENCY_OPEN, REPORT_UNFINISHED -> TitrationRule.EMERGENCY_FIRST;
      case PAST_LONG -> TitrationRule.LONG_BEFORE_RECORD;
      case PAST_OPEN -> TitrationRule.LAST_INJECTION_FIRST;
      case SCREENING_OPEN -> TitrationRule.SCREENING_FIRST;
      case DECISION_MISSING -> TitrationRule.DECISION_FIRST;
      case PROTOCOL_NOT_FOR -> TitrationRule.PROTOCOL_FIRST;
      case RECORD_NOT_SOUND -> TitrationRule.RECORD_FIRST;
      case CLOCK_NOT_KNOWN -> TitrationRule.CLOCK_FIRST;
      case COURSE_PAUSED -> TitrationRule.RESUME_FIRST;
      case COURSE_ENDED -> TitrationRule.ENDED;
      case RECALLED -> TitrationRule.RECALL_FIRST;
      case UNDER_OBSERVATION -> TitrationRule.OBSERVATION_FIRST;
      default -> TitrationRule.NOT_SAFE_TO_START;
    };
  }
}
