package rungwise.web.access;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The sign-in form as shown.
 *
 * @param next where it leads once signed in
 * @param notice why it is shown; may be empty
 * @param other the other ways to sign in
 */
public record SignInPage(
    Field signInName,
    Field password,
    String next,
    String notice,
    Faults faults,
    OtherWays.Offered other) {

  /** Where the clinic's own provider is asked, and what is shown after it. */
  public String providerPath() {
    return "/sign-in/clinic?next=" + URLEncoder.encode(next, StandardCharsets.UTF_8);
  }

  static SignInPage of(
      String typedName, String next, String notice, Faults faults, OtherWays.Offered other) {
    return new SignInPage(
        Field.of(Field.Kind.TEXT, "signInName", "Sign-in name")
            .withAutocomplete("username")
            .withValue(typedName),
        Field.of(Field.Kind.SECRET, "password", "Password").withAutocomplete("current-password"),
        next,
        notice,
        faults,
        other);
  }
}
