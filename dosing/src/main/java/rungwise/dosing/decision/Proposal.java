package rungwise.dosing.decision;

import java.util.List;

/**
 * A decision with the rules that led to it.
 *
 * @param reasons at least one; the deciding one first
 */
public record Proposal(Decision decision, List<Reason> reasons) {

  public Proposal {
    reasons = List.copyOf(reasons);
    if (reasons.isEmpty()) {
      throw new IllegalArgumentException("bug: a decision without a reason");
    }
  }
}
