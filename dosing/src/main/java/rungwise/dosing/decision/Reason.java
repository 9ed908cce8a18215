package rungwise.dosing.decision;

import java.util.List;
import rungwise.dosing.history.Fact;
import rungwise.dosing.source.Source;

/**
 * A rule that spoke, and what it read.
 *
 * @param source where the number comes from that it rests on
 */
public record Reason(TitrationRule rule, List<Fact> facts, Source source) {

  public Reason {
    facts = List.copyOf(facts);
  }

  /** A reason that rests on the rule's usual source. */
  public Reason(TitrationRule rule, List<Fact> facts) {
    this(rule, facts, rule.source());
  }

  /** The same, with the source of its own number. */
  Reason citing(Source other) {
    return new Reason(rule, facts, other);
  }

  @Override
  public String toString() {
    return rule + " " + facts;
  }
}
