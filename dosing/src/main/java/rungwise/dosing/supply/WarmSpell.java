package rungwise.dosing.supply;

import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;

/**
 * A vial was warmer than its label allows.
 *
 * @param celsius the most it can have been; empty if nobody knows
 * @param longest the longest that it can have been so; empty if nobody knows
 */
public record WarmSpell(Optional<Integer> celsius, Optional<TimeSpan> longest) {

  /** What the general rule says of it. A label or a study of the product goes before the rule. */
  public enum Rule {
    /** As short as the rule lets pass: somebody still has to look whether the label does. */
    SHORT_ENOUGH,
    /** To be thrown away. */
    DISCARD,
    /** Too little is known, which is no better than too long. */
    NOT_KNOWN
  }

  /** Warmer than the label for longer than this, and it is thrown away. */
  public static final Sourced<TimeSpan> LONGEST =
      new Sourced<>(TimeSpan.ofHours(4), Source.read(Citation.USP_797_OLDER, "USP 28 text"));

  /** Warmer than this, no time is short enough. */
  public static final Sourced<Integer> WARMEST =
      new Sourced<>(40, Source.read(Citation.USP_797_OLDER, "USP 28 text"));

  /**
   * By the general rule.
   *
   * @param label the most degrees that the label allows
   */
  public Rule by(int label) {
    if (celsius.filter(one -> one <= label).isPresent()) {
      return Rule.SHORT_ENOUGH;
    }
    boolean tooWarm = celsius.filter(one -> one > WARMEST.value()).isPresent();
    boolean tooLong = longest.filter(one -> one.compareTo(LONGEST.value()) > 0).isPresent();
    if (tooWarm || tooLong) {
      return Rule.DISCARD;
    }
    return celsius.isPresent() && longest.isPresent() ? Rule.SHORT_ENOUGH : Rule.NOT_KNOWN;
  }
}
