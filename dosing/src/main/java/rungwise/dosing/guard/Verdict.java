package rungwise.dosing.guard;

import java.util.List;
import rungwise.dosing.history.Fact;
import rungwise.dosing.source.Source;

/**
 * A guard's answer when it has something to say.
 *
 * @param source where the number comes from that it rests on
 */
public record Verdict(GuardRule rule, List<Fact> facts, Clears clears, Source source) {

  public Verdict {
    facts = List.copyOf(facts);
  }

  /** A verdict that rests on the rule's usual source. */
  public Verdict(GuardRule rule, List<Fact> facts, Clears clears) {
    this(rule, facts, clears, rule.source());
  }

  /** The same, resting on another source. */
  Verdict citing(Source other) {
    return new Verdict(rule, facts, clears, other);
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
