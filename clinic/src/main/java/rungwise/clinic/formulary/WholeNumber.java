package rungwise.clinic.formulary;

import java.util.regex.Pattern;
import rungwise.quantities.Reading;

/** Reads a whole number from 1 to 999. */
final class WholeNumber {

  private static final Pattern ACCEPTED = Pattern.compile("[1-9][0-9]{0,2}");

  private WholeNumber() {}

  static Reading<Integer> read(String typed) {
    String text = typed.strip();
    return ACCEPTED.matcher(text).matches()
        ? Reading.of(Integer.valueOf(text))
        : Reading.refused("\"" + text + "\" is not a whole number from 1 to 999, such as 28.");
  }
}
