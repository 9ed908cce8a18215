package rungwise.dosing.choice;

import java.util.Optional;
import rungwise.dosing.decision.Proposal;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.history.Question;
import rungwise.quantities.Volume;

/** A way to choose the next dose. Each may only choose among what the guards leave. */
public sealed interface Choice permits ByRule, ByRuleAndModel {

  /** What a stored decision remembers of it. */
  String key();

  /** What this way would do. The guards are asked again afterwards. */
  Proposal choose(Question question);

  /**
   * Why a volume may not follow without another look, by the limits that the protocol sets for the
   * response model; empty if it sets none or the volume is within them. A limit that this way
   * cannot keep counts as passed.
   */
  Optional<Reason> beyondLimits(Question question, Volume volume);
}
