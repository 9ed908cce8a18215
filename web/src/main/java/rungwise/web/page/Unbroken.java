package rungwise.web.page;

import java.util.regex.Pattern;

/**
 * Text in which a number is never parted from its unit at the end of a line.
 *
 * <p>A dose that breaks after the number can be read with the unit of the line below.
 */
public final class Unbroken {

  private static final String WORD_JOINER = "\u2060";
  private static final String NO_BREAK_SPACE = "\u00A0";

  private static final String HYPHEN = "-";

  /** Each part begins with the one character it joins at, which is quickly not there. */
  private static final Pattern JOINT =
      Pattern.compile(
          " (?<=[0-9] )(?=(?:mL|mg|mcg|ng|g|IU|%|units?|minutes?|min|hours?|h|days?|weeks?"
              + "|months?|years?)(?![\\p{L}\\p{N}]))"
              + "| (?<=(?:m[gL]|mcg) )(?=per mL\\b)"
              + "| (?<=\\bper )(?=mL\\b)"
              + "|-(?<=(?:[0-9]|half)-)(?=unit)"
              + "|-(?<=U-)(?=100)");

  private Unbroken() {}

  /** The same words, each amount and each mark in one piece. */
  public static String unbroken(String text) {
    return JOINT
        .matcher(text)
        .replaceAll(joint -> joint.group().equals(HYPHEN) ? HYPHEN + WORD_JOINER : NO_BREAK_SPACE);
  }
}
