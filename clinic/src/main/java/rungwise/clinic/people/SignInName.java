package rungwise.clinic.people;

import java.util.regex.Pattern;
import rungwise.quantities.Reading;

/**
 * The name by which a person signs in: 3 to 40 lower-case letters a-z, digits, dots or dashes. One
 * way of writing it, so that two names never look alike by case or by accent.
 */
public record SignInName(String text) implements Comparable<SignInName> {

  private static final Pattern ACCEPTED = Pattern.compile("[a-z0-9.-]{3,40}");

  public SignInName {
    if (!ACCEPTED.matcher(text).matches()) {
      throw new IllegalArgumentException("bug: a sign-in name of " + text);
    }
  }

  public static Reading<SignInName> parse(String text) {
    if (ACCEPTED.matcher(text).matches()) {
      return Reading.of(new SignInName(text));
    }
    return Reading.refused(
        "\""
            + text
            + "\" is not a sign-in name: use 3 to 40 lower-case letters a-z, digits, dots or"
            + " dashes, such as ana.ruiz");
  }

  @Override
  public int compareTo(SignInName other) {
    return text.compareTo(other.text);
  }

  @Override
  public String toString() {
    return text;
  }
}
