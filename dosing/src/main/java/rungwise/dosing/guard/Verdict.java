package rungwise.dosing.guard;

import java.util.List;
import rungwise.dosing.history.Fact;

/** A guard's answer when it has something to say. */
public record Verdict(GuardRule rule, List<Fact> facts, Clears clears) {

  public Verdict {
    facts = List.copyOf(facts);
  }

  static Verdict of(GuardRule rule, Fact... facts) {
    return new Verdict(rule, List.of(facts), rule.clears());
  }

  /** Whether no signature opens it. */
  public boolean isHardStop() {
    return rule.guardClass() == GuardClass.HARD_STOP;
  }

  /** Whether it forbids anything now. */
  public boolean isBlock() {
    return rule.guardClass() != GuardClass.NOTE;
  }

  @Override
  public String toString() {
    return rule + " " + facts + " clears " + clears;
  }
}
