package rungwise.web.access;

import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The sign-in form as shown.
 *
 * @param next where it leads once signed in
 * @param notice why it is shown; may be empty
 */
public record SignInPage(
    Field signInName, Field password, String next, String notice, Faults faults) {

  static SignInPage of(String typedName, String next, String notice, Faults faults) {
    return new SignInPage(
        Field.of(Field.Kind.TEXT, "signInName", "Sign-in name")
            .withAutocomplete("username")
            .withValue(typedName),
        Field.of(Field.Kind.SECRET, "password", "Password").withAutocomplete("current-password"),
        next,
        notice,
        faults);
  }
}
