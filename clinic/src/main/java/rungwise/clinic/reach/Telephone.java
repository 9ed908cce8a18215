package rungwise.clinic.reach;

import java.util.Optional;
import java.util.regex.Pattern;
import rungwise.clinic.OutsideText;
import rungwise.quantities.Reading;

/**
 * A telephone number as it was given, with what he asked for at it.
 *
 * @param text as typed
 * @param hours when it may be called; empty if he said nothing of it
 */
public record Telephone(String text, Whose whose, Optional<Hours> hours, Message message) {

  /** The most characters of a number with its extension. */
  public static final int LONGEST = 40;

  /** Fewer digits are no number anywhere. */
  private static final int FEWEST_DIGITS = 3;

  /** What a telephone can dial as it stands: a digit in brackets is left out by some callers. */
  private static final Pattern DIALLED = Pattern.compile("\\+?[\\p{Nd} ()./\u2011-]+");

  private static final Pattern LEFT_OUT = Pattern.compile("\\+.*\\(\\s*\\p{Nd}\\s*\\).*");

  /** Who answers there. */
  public enum Whose {
    HIS("his own"),
    AT_HOME("at home, where others may answer"),
    AT_WORK("at work, where others may answer"),
    ANOTHERS("somebody else's");

    private final String words;

    Whose(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** What may be left there where nobody answers. */
  public enum Message {
    NONE("leave no message"),
    CALL_BACK("a message may ask him to call back, and says nothing else");

    private final String words;

    Message(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** A number as somebody typed it. */
  public static Reading<String> read(String typed) {
    return switch (OutsideText.line("The number", typed, LONGEST)) {
      case Reading.Refused<String> refused -> refused;
      case Reading.Read<String> read ->
          digits(read.value()).length() < FEWEST_DIGITS
              ? Reading.refused(
                  "\""
                      + read.value()
                      + "\" is not a telephone number: enter at least "
                      + FEWEST_DIGITS
                      + " digits, such as 07700 900123.")
              : read;
    };
  }

  /**
   * What a telephone dials; empty where letters, an extension or a digit in brackets leave it open:
   * such a number is dialled by hand.
   */
  public Optional<String> dialled() {
    return dialled(text);
  }

  /** The same of a number of anybody's, as it is written. */
  public static Optional<String> dialled(String text) {
    boolean isPlain = DIALLED.matcher(text).matches() && !LEFT_OUT.matcher(text).matches();
    return isPlain
        ? Optional.of((text.startsWith("+") ? "+" : "") + digits(text))
        : Optional.empty();
  }

  private static String digits(String text) {
    return text.codePoints()
        .filter(Character::isDigit)
        .map(point -> Character.digit(point, 10))
        .collect(StringBuilder::new, StringBuilder::append, StringBuilder::append)
        .toString();
  }
}
