package rungwise.clinic.people;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import rungwise.quantities.Fault;

/**
 * What a new password must be: long, not the sign-in name, not one that everybody tries first. Any
 * characters count; nothing asks for a digit or a sign (OWASP ASVS 5.0, section 6.2).
 */
final class PasswordRule {

  static final int SHORTEST = 12;
  static final int LONGEST = 128;

  private static final Pattern DECORATION = Pattern.compile("^[^\\p{L}]+|[^\\p{L}]+$");

  private final Set<String> common;

  PasswordRule() {
    common = readCommon();
  }

  /** The same at the field where it is typed. */
  List<Fault> faults(String typed, String signInName, String field) {
    return faults(typed, signInName).stream().map(text -> new Fault(field, text)).toList();
  }

  /** Every fault of a password that somebody wants to set; empty if it may be used. */
  List<String> faults(String typed, String signInName) {
    String password = normal(typed);
    int length = password.codePointCount(0, password.length());
    String lower = password.toLowerCase(Locale.ROOT);
    var faults = new ArrayList<String>();
    if (length < SHORTEST) {
      faults.add(
          "The password has %d characters: use at least %d, such as four words in a row"
              .formatted(length, SHORTEST));
    }
    if (length > LONGEST) {
      faults.add("The password has %d characters: use at most %d".formatted(length, LONGEST));
    }
    if (lower.equals(signInName.toLowerCase(Locale.ROOT))) {
      faults.add("The password is the sign-in name: choose another");
    }
    if (common.contains(lower) || common.contains(DECORATION.matcher(lower).replaceAll(""))) {
      faults.add(
          "The password is one of those that are tried first: choose one that nobody would guess,"
              + " such as four words in a row");
    }
    return faults;
  }

  /** One form for what looks the same, so that a password typed on another keyboard is the same. */
  static String normal(String typed) {
    return Normalizer.normalize(typed, Normalizer.Form.NFC);
  }

  private static Set<String> readCommon() {
    var list = PasswordRule.class.getResourceAsStream("common-passwords.txt");
    Objects.requireNonNull(list, "bug: the list of common passwords is missing");
    try (var lines = new BufferedReader(new InputStreamReader(list, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("# "))
          .collect(Collectors.toUnmodifiableSet());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
