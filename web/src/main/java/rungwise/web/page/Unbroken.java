package rungwise.web.page;

import java.util.regex.Pattern;

/**
 * Text in which a number is never parted from its unit at the end of a line.
 *
 * <p>A dose that breaks after the number can be read with the unit of the line below.
 */
public final class Unbroken {

  private static final String WORD_JOINER = "\u2060";
  private static final char NO_BREAK_SPACE = '\u00A0';

  private static final Pattern SPACE_INSIDE_AMOUNT =
      Pattern.compile(
          "(?<=[0-9]) (?=(?:mL|mg|mcg|ng|g|IU|%|units?|minutes?|min|hours?|h|days?|weeks?"
              + "|months?|years?)(?![\\p{L}\\p{N}]))");

  private static final Pattern SPACE_BEFORE_PER = Pattern.compile("(?<=m[gL]|mcg) (?=per mL\\b)");
  private static final Pattern SPACE_AFTER_PER = Pattern.compile("(?<=\\bper) (?=mL\\b)");

  private static final Pattern HYPHEN_OF_A_MARK =
      Pattern.compile("(?<=[0-9]|half)-(?=unit)|(?<=U)-(?=100)");

  private Unbroken() {}

  /** The same words, each amount and each mark in one piece. */
  public static String unbroken(String text) {
    String joined = join(SPACE_INSIDE_AMOUNT, text);
    String whole = join(SPACE_AFTER_PER, join(SPACE_BEFORE_PER, joined));
    return HYPHEN_OF_A_MARK.matcher(whole).replaceAll("-" + WORD_JOINER);
  }

  private static String join(Pattern space, String text) {
    return space.matcher(text).replaceAll(String.valueOf(NO_BREAK_SPACE));
  }
}
