package rungwise.dosing.guard;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Fact;

/**
 * A hold that a prescriber overrode when a dose was signed, with what it had read. It says nothing
 * about a hold of the same rule that reads anything else, and nothing about what is no hold.
 *
 * @param facts what the hold had read; none in a record of before they were kept
 * @param until the instant from which it holds no more, where the rule asks for one
 */
public record OverriddenHold(GuardRule rule, List<Fact> facts, Optional<Instant> until) {

  public OverriddenHold {
    facts = List.copyOf(facts);
  }

  /** The override of a verdict. */
  public static OverriddenHold of(Verdict verdict, Optional<Instant> until) {
    return new OverriddenHold(verdict.rule(), verdict.facts(), until);
  }

  /** Whether it lifts a verdict off a dose that is signed for a place. */
  boolean lifts(Verdict verdict, boolean isInClinic, Instant now) {
    boolean isTheSame = verdict.rule() == rule && verdict.facts().equals(facts);
    return isTheSame
        && switch (rule.overriding()) {
          case NEVER -> false;
          case IN_THE_CLINIC -> isInClinic && !isSecondInADay(verdict, now);
          case UNTIL_A_DATE -> until.filter(now::isBefore).isPresent();
          case WHILE_THE_SAME -> true;
        };
  }

  /** Within 24 hours only the rule for the same visit lets a dose follow, and no signature. */
  private static boolean isSecondInADay(Verdict verdict, Instant now) {
    return verdict.rule() == GuardRule.SPACING
        && verdict.facts().stream()
            .filter(Fact.Happened.class::isInstance)
            .map(fact -> ((Fact.Happened) fact).at())
            .anyMatch(at -> TimeGuards.isWithinADay(at, now));
  }
}
