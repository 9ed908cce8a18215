package rungwise.dosing.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.PartialRow;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.ladder.Ladder;
import rungwise.quantities.Volume;

/**
 * What the last report of this preparation leads to, in the order of danger: two hours, one hour,
 * unknown; only then how firm it was. What was really drawn decides: nothing above it is wanted but
 * after a poor response of which everything was asked, and nothing above the order because more was
 * drawn.
 */
record AfterReport(Question question, Injection report) {

  Wanted wanted() {
    if (report.closesVolume()) {
      return down(
          TitrationRule.TWO_HOURS_OR_MORE, TitrationRule.TWO_HOURS_AT_LOWEST, new Decision.Stop());
    }
    if (report.soft().mayPass(DurationLimits.NO_HIGHER_DOSE.value())) {
      return report.grade().isUseful()
          ? down(
              TitrationRule.OVER_AN_HOUR,
              TitrationRule.OVER_AN_HOUR_AT_LOWEST,
              new Decision.Pause())
          : again(TitrationRule.LONG_BUT_NOT_USABLE, new Decision.Refer());
    }
    if (report.forbidsHigherDose() && isNotKnownAgain()) {
      return Wanted.none(new Decision.Pause(), reason(TitrationRule.NOT_KNOWN_AGAIN));
    }
    if (report.forbidsHigherDose()) {
      return again(TitrationRule.DURATION_NOT_KNOWN, new Decision.Pause());
    }
    if (report.grade().isUseful()) {
      boolean isPair = !question.history().sameStayBefore(report).isEmpty();
      return again(
          isPair ? TitrationRule.TWO_DOSES_TOGETHER : TitrationRule.SETTLED, new Decision.Refer());
    }
    return switch (report.causes()) {
      case NOT_ASKED -> again(TitrationRule.CAUSES_NOT_ASKED, new Decision.Pause());
      case ONE_FOUND -> again(TitrationRule.CAUSE_FOUND, new Decision.Refer());
      case NONE_FOUND -> afterPoorResponse();
    };
  }

  /** Whether the injection before it left the same question open. */
  private boolean isNotKnownAgain() {
    List<Injection> since = question.history().sinceChangeTo(question.preparation());
    return since.size() > 1 && since.get(since.size() - 2).isNotKnownHowLong();
  }

  /** A poor response, over in time, with nothing wrong: the only one that may lead to more. */
  private Wanted afterPoorResponse() {
    Optional<Volume> next = ladder().above(report.smallerOfDrawnAndOrdered());
    if (next.isEmpty()) {
      return Wanted.none(new Decision.Refer(), reason(TitrationRule.AT_MAXIMUM));
    }
    if (wasTooLongAtOrBelow(next.get())) {
      return Wanted.none(new Decision.Refer(), reason(TitrationRule.NEXT_STEP_TOO_LONG));
    }
    if (report.isLessThanOrdered()) {
      return backToOrdered(next.get());
    }
    if (!PartialRow.isEnough(question.history(), question.protocol())) {
      return again(TitrationRule.PARTIAL_AGAIN, new Decision.Refer());
    }
    return Wanted.dose(next.get(), reason(stepRule()));
  }

  /** The ordered dose, or the one step above what was drawn if that is less. */
  private Wanted backToOrdered(Volume next) {
    boolean isReached = report.ordered().filter(ordered -> !next.isMoreThan(ordered)).isPresent();
    return isReached
        ? Wanted.dose(next, reason(TitrationRule.LESS_THAN_ORDERED))
        : again(TitrationRule.LESS_THAN_ORDERED, new Decision.Refer());
  }

  private TitrationRule stepRule() {
    if (report.ordered().filter(report.drawn()::isMoreThan).isPresent()) {
      return TitrationRule.STEP_ABOVE_ORDER;
    }
    if (report.grade() == Grade.NONE) {
      return TitrationRule.STEP_AFTER_NONE;
    }
    boolean countsPartials = question.protocol().partialResponsesBeforeStep() > 1;
    return countsPartials && report.grade() == Grade.FULLER
        ? TitrationRule.STEP_AFTER_FULLER
        : TitrationRule.STEP_AFTER_PARTIAL;
  }

  private boolean wasTooLongAtOrBelow(Volume volume) {
    return question.history().everSaid().stream()
        .filter(one -> one.isReachedBy(question.preparation(), volume))
        .anyMatch(one -> one.soft().mayPass(DurationLimits.NO_HIGHER_DOSE.value()));
  }

  /** The largest step below what was drawn that is not above what was ordered. */
  private Wanted down(TitrationRule rule, TitrationRule atLowest, Decision.WithoutDose otherwise) {
    return within(volume -> volume.isLessThan(report.drawn()))
        .map(volume -> Wanted.dose(volume, reason(rule)))
        .orElseGet(() -> Wanted.none(otherwise, reason(atLowest)));
  }

  /** The same dose: the largest step that is above neither what was drawn nor what was ordered. */
  private Wanted again(TitrationRule rule, Decision.WithoutDose otherwise) {
    Optional<Volume> step = within(volume -> !volume.isMoreThan(report.drawn()));
    if (step.isEmpty()) {
      return Wanted.none(otherwise, reason(rule)).and(reason(TitrationRule.NO_STEP_SO_LOW));
    }
    Wanted same = Wanted.dose(step.get(), reason(rule));
    return step.get().equals(report.drawn())
        ? same
        : same.and(reason(TitrationRule.NOT_DRAWN_AS_STEP));
  }

  private Optional<Volume> within(Predicate<Volume> ofDrawn) {
    return ladder().rungs().stream()
        .filter(ofDrawn)
        .filter(volume -> report.ordered().filter(volume::isMoreThan).isEmpty())
        .reduce((low, high) -> high);
  }

  private Ladder ladder() {
    return question.ladder();
  }

  private Reason reason(TitrationRule rule) {
    return new Reason(rule, facts());
  }

  private List<Fact> facts() {
    var facts = new ArrayList<Fact>();
    facts.add(new Fact.Happened("last injection", report.at()));
    facts.add(Fact.said("drawn", report.drawn()));
    if (!question.history().sameStayBefore(report).isEmpty()) {
      facts.add(Fact.said("in that visit in all", question.history().cumulative(report)));
    }
    report.ordered().ifPresent(ordered -> facts.add(Fact.said("ordered", ordered)));
    facts.add(Fact.said("response", report.responseWords()));
    facts.add(Fact.said("simple causes", report.causes().words()));
    PartialRow.of(question.history(), question.protocol())
        .ifPresent(row -> facts.add(Fact.said("partial responses in a row at this dose", row)));
    return facts;
  }
}
