package rungwise.dosing.choice;

import rungwise.dosing.history.Question;

/** A way to choose the next dose. Each may only choose among what the guards leave. */
public sealed interface Choice permits ByRule, ByRuleAndModel {

  /** What a stored decision remembers of it. */
  String key();

  /** What this way wants. The guards are asked again afterwards. */
  Wanted choose(Question question);
}
