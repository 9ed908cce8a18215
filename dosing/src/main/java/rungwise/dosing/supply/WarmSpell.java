package rungwise.dosing.supply;

import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;

/**
 * A vial was warmer than its label allows. A time that is known is both the least and the most.
 *
 * @param celsius the most it can have been; empty if nobody knows
 * @param least how long at least; empty if nobody knows
 * @param most how long at most; empty if nobody knows
 */
public record WarmSpell(
    Optional<Integer> celsius, Optional<TimeSpan> least, Optional<TimeSpan> most) {

  /** What the general rule says of it. A label or a study of the product goes before the rule. */
  public enum Rule {
    /** As short as the rule lets pass: somebody still has to look whether the label does. */
    SHORT_ENOUGH("short enough by the general rule, if its label does not say less"),
    /** To be thrown away. */
    DISCARD("to be thrown away by the general rule, unless data of the product support it"),
    /** Too little is known, which is no better than too long. */
    NOT_KNOWN("too little is known for the general rule: ask the pharmacy");

    private final String words;

    Rule(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Warmer than the label for longer than this, and it is thrown away. */
  public static final Sourced<TimeSpan> LONGEST =
      new Sourced<>(TimeSpan.ofHours(4), Source.read(Citation.USP_797_OLDER, "USP 28 text"));

  /** Warmer than this, no time is short enough. */
  public static final Sourced<Integer> WARMEST =
      new Sourced<>(40, Source.read(Citation.USP_797_OLDER, "USP 28 text"));

  /** A spell of a known warmth and time. */
  public static WarmSpell of(int celsius, TimeSpan span) {
    return new WarmSpell(Optional.of(celsius), Optional.of(span), Optional.of(span));
  }

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
    if (tooWarm || least.filter(one -> one.isMoreThan(LONGEST.value())).isPresent()) {
      return Rule.DISCARD;
    }
    boolean isShort = most.filter(one -> !one.isMoreThan(LONGEST.value())).isPresent();
    return isShort && celsius.isPresent() ? Rule.SHORT_ENOUGH : Rule.NOT_KNOWN;
  }
}
