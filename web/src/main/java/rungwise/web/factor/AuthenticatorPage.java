package rungwise.web.factor;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.factor.FactorSecret;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * Setting up an authenticator app as shown.
 *
 * @param picture for the camera of the app
 * @param secret the same for typing
 */
public record AuthenticatorPage(String picture, String secret, Field code, Faults faults) {

  private static final String CODE = "code";

  static AuthenticatorPage of(FactorSecret secret, String address, Optional<String> fault) {
    Faults faults =
        fault.map(text -> new Faults(List.of(new Fault(CODE, text)))).orElse(Faults.NONE);
    return new AuthenticatorPage(
        QrPicture.of(address),
        secret.grouped(),
        Field.of(Field.Kind.COUNT, CODE, "Code")
            .withHint("The 6 digits that the app shows now.")
            .withAutocomplete("one-time-code")
            .withFaults(faults),
        faults);
  }
}
