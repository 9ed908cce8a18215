package rungwise.web.page;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Text in which a number is never parted from its unit at the end of a line.
 *
 * <p>A dose that breaks after the number can be read with the unit of the line below.
 */
public final class Unbroken {

  private static final String WORD_JOINER = "\u2060";
  private static final String NO_BREAK_SPACE = "\u00A0";

  private static final char HYPHEN = '-';

  /** Each part begins with the one character it joins at, which is quickly not there. */
  private static final Pattern JOINT =
      Pattern.compile(
          " (?<=[0-9] )(?=(?:mL|mg|mcg|ng|g|IU|%|units?|minutes?|min|hours?|h|days?|weeks?"
              + "|months?|years?)(?![\\p{L}\\p{N}]))"
              + "| (?<=(?:m[gL]|mcg) )(?=per mL\\b)"
              + "| (?<=\\bper )(?=mL\\b)"
              + "|-(?<=(?:[0-9]|half)-)(?=unit)"
              + "|-(?<=U-)(?=100)");

  /** What stands before a joint, beside digits: the ends of mL, mg, mcg, per, half and U. */
  private static final String BEFORE_JOINTS = "LgrfU";

  private Unbroken() {}

  /** The same words, each amount and each mark in one piece. */
  public static String unbroken(String text) {
    Matcher joint = JOINT.matcher(text).useTransparentBounds(true);
    var joined = new StringBuilder(text.length() + BEFORE_JOINTS.length());
    for (int at = 0; at < text.length(); at++) {
      char sign = text.charAt(at);
      if (mayJoin(text, at) && joint.region(at, text.length()).lookingAt()) {
        joined.append(sign == HYPHEN ? HYPHEN + WORD_JOINER : NO_BREAK_SPACE);
      } else {
        joined.append(sign);
      }
    }
    return joined.toString();
  }

  /** Most spaces stand between two words, where the pattern need not be asked. */
  private static boolean mayJoin(String text, int at) {
    char sign = text.charAt(at);
    if ((sign != ' ' && sign != HYPHEN) || at == 0) {
      return false;
    }
    char before = text.charAt(at - 1);
    return Character.isDigit(before) || BEFORE_JOINTS.indexOf(before) >= 0;
  }
}
