package rungwise.web.page;

import java.util.regex.Pattern;

/**
 * Text in which a number is never parted from its unit at the end of a line.
 *
 * <p>A dose that breaks after the number can be read with the unit of the line below.
 */
public final class Unbroken {

  private static final char NO_BREAK_SPACE = '\u00A0';

  private static final Pattern SPACE_INSIDE_AMOUNT =
      Pattern.compile(
          "(?<=[0-9]) (?=(?:mL|mg|mcg|ng|g|IU|%|units?|minutes?|min|hours?|h|days?|weeks?"
              + "|months?|years?)(?![\\p{L}\\p{N}]))");

  private static final Pattern SPACE_BEFORE_PER = Pattern.compile("(?<=m[gL]|mcg) (?=per mL\\b)");
  private static final Pattern SPACE_AFTER_PER = Pattern.compile("(?<=\\bper) (?=mL\\b)");

  private Unbroken() {}

  /** The same words, with no-break spaces inside each amount. */
  public static String unbroken(String text) {
    String joined = join(SPACE_INSIDE_AMOUNT, text);
    return join(SPACE_AFTER_PER, join(SPACE_BEFORE_PER, joined));
  }

  private static String join(Pattern space, String text) {
    return space.matcher(text).replaceAll(String.valueOf(NO_BREAK_SPACE));
  }
}
