package rungwise.clinic;

import java.util.regex.Pattern;

/**
 * A text in a cell of a table that is taken elsewhere. A spreadsheet takes what begins with one of
 * a few signs for a formula and runs it, so an apostrophe is written before it; reading takes that
 * away again, and one of several apostrophes likewise, so that every text comes back as it was.
 */
public final class TableText {

  /** With these, also in full width, and after any number of apostrophes (OWASP, CSV injection). */
  private static final String BEGINS_A_FORMULA = "[=+\\-@\\t\\r\uFF1D\uFF0B\uFF0D\uFF20]";

  private static final Pattern ACTS = Pattern.compile("(?s)'*" + BEGINS_A_FORMULA + ".*");
  private static final Pattern MADE_SAFE = Pattern.compile("(?s)'+" + BEGINS_A_FORMULA + ".*");

  private TableText() {}

  /** As it may stand in a table. */
  public static String safe(String text) {
    return ACTS.matcher(text).matches() ? "'" + text : text;
  }

  /** As it was before it was made safe. */
  public static String read(String cell) {
    return MADE_SAFE.matcher(cell).matches() ? cell.substring(1) : cell;
  }
}
