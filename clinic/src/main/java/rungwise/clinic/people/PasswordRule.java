package rungwise.clinic.people;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiPredicate;
import rungwise.quantities.Fault;

/**
 * What a new password must be: long, and not one that would be guessed: among the most common, or
 * made of them, of its owner's names or of the clinic's. Any characters count; nothing asks for a
 * digit or a sign (OWASP ASVS 5.0, section 6.2).
 *
 * @param clinic the clinic's name; empty where there is none
 */
record PasswordRule(BiPredicate<String, Set<String>> guessed, Set<String> clinic) {

  static final int SHORTEST = 12;
  static final int LONGEST = 128;

  PasswordRule {
    clinic = Set.copyOf(clinic);
  }

  /** The same at the field where it is typed. */
  List<Fault> faults(String typed, Set<String> own, String field) {
    return faults(typed, own).stream().map(text -> new Fault(field, text)).toList();
  }

  /**
   * Every fault of a password that somebody wants to set; empty if it may be used.
   *
   * @param own the names of its owner
   */
  List<String> faults(String typed, Set<String> own) {
    String password = normal(typed);
    int length = password.codePointCount(0, password.length());
    var faults = new ArrayList<String>();
    if (length < SHORTEST) {
      faults.add(
          "The password has %d characters: use at least %d, such as four words in a row."
              .formatted(length, SHORTEST));
    }
    if (length > LONGEST) {
      faults.add("The password has %d characters: use at most %d.".formatted(length, LONGEST));
    } else if (guessed.test(password, names(own))) {
      faults.add(
          "The password would be guessed: it is, or is made of, what is tried first, your name or"
              + " the clinic's. Choose one that nobody would guess, such as four words in a row.");
    }
    return faults;
  }

  private Set<String> names(Set<String> own) {
    var names = new HashSet<>(own);
    names.addAll(clinic);
    return names;
  }

  /** One form for what looks the same, so that a password typed on another keyboard is the same. */
  static String normal(String typed) {
    return Normalizer.normalize(typed, Normalizer.Form.NFC);
  }
}
