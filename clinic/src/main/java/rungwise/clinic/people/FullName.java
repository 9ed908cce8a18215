package rungwise.clinic.people;

import java.util.regex.Pattern;
import rungwise.clinic.OutsideText;
import rungwise.quantities.Reading;

/** The rule for a person's name as colleagues read it: 1 to 100 characters on one line. */
final class FullName {

  private static final int LONGEST = 100;
  private static final Pattern BEFORE = Pattern.compile("[^\\p{C}\\s](?:[^\\p{C}]{0,99})");

  private FullName() {}

  /** What was kept by the rule before this one is accepted too. */
  static boolean isAccepted(String text) {
    return BEFORE.matcher(text).matches() || isReadAs(text);
  }

  private static boolean isReadAs(String text) {
    return OutsideText.line("The full name", text, LONGEST)
        .found()
        .filter(text::equals)
        .isPresent();
  }

  static Reading<String> parse(String text) {
    return text.isBlank()
        ? Reading.refused(
            "The full name is missing: write the name that colleagues know, such as Ana Ruiz")
        : OutsideText.line("The full name", text, LONGEST);
  }
}
