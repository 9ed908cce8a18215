package rungwise.dosing.decision;

import java.util.List;
import rungwise.dosing.history.Fact;

/** A rule that spoke, and what it read. */
public record Reason(TitrationRule rule, List<Fact> facts) {

  public Reason {
    facts = List.copyOf(facts);
  }

  @Override
  public String toString() {
    return rule + " " + facts;
  }
}
