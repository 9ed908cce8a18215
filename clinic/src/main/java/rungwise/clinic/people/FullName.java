package rungwise.clinic.people;

import java.util.regex.Pattern;
import rungwise.quantities.Reading;

/** The rule for a person's name as colleagues read it: 1 to 100 characters on one line. */
final class FullName {

  private static final Pattern ACCEPTED = Pattern.compile("[^\\p{C}\\s](?:[^\\p{C}]{0,99})");

  private FullName() {}

  static boolean isAccepted(String text) {
    return ACCEPTED.matcher(text).matches();
  }

  static Reading<String> parse(String text) {
    String trimmed = text.strip();
    if (isAccepted(trimmed)) {
      return Reading.of(trimmed);
    }
    return Reading.refused(
        trimmed.isEmpty()
            ? "The full name is missing: write the name that colleagues know, such as Ana Ruiz"
            : "The full name cannot be used: write 1 to 100 characters on one line");
  }
}
