package rungwise.web.people;

import java.util.Optional;
import rungwise.clinic.people.AccountFields;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The form with which a person opens an account by a one-time code, as shown.
 *
 * @param fullName asked at first start only
 */
public record OpeningPage(
    Field code, Field signInName, Optional<Field> fullName, Field password, Faults faults) {

  /** What was typed into the form; a password is never sent back. */
  record Typed(String code, String signInName, String fullName) {
    static final Typed NOTHING = new Typed("", "", "");
  }

  static OpeningPage firstStart(Typed typed, Faults faults) {
    return of(
        typed,
        Optional.of(
            Field.of(Field.Kind.TEXT, AccountFields.FULL_NAME, "Full name")
                .withHint("As colleagues know you, such as Ana Ruiz.")
                .withAutocomplete("name")
                .withValue(typed.fullName())
                .withFaults(faults)),
        "Printed in the terminal where the program was started.",
        faults);
  }

  static OpeningPage welcome(Typed typed, Faults faults) {
    return of(typed, Optional.empty(), "Your administrator gave it to you. It works once.", faults);
  }

  private static OpeningPage of(
      Typed typed, Optional<Field> fullName, String codeHint, Faults faults) {
    return new OpeningPage(
        Field.of(Field.Kind.TEXT, AccountFields.CODE, "One-time code")
            .withHint(codeHint)
            .withAutocomplete("one-time-code")
            .withValue(typed.code())
            .withFaults(faults),
        Field.of(Field.Kind.TEXT, AccountFields.SIGN_IN_NAME, "Sign-in name")
            .withHint("3 to 40 lower-case letters, digits, dots or dashes, such as ana.ruiz.")
            .withAutocomplete("username")
            .withValue(typed.signInName())
            .withFaults(faults),
        fullName,
        Field.of(Field.Kind.SECRET, AccountFields.PASSWORD, "New password")
            .withHint("At least 12 characters, such as four words in a row.")
            .withAutocomplete("new-password")
            .withFaults(faults),
        faults);
  }
}
