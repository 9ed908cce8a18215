package rungwise.web.factor;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.factor.FactorStanding;
import rungwise.clinic.people.Account;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/** The second factor of somebody else as shown to an administrator. */
public record ResetPage(
    String accountPath,
    String fullName,
    boolean hasAuthenticator,
    int recoveryCodes,
    int passkeys,
    boolean isSetUp,
    Field reason,
    String notice,
    Faults faults) {

  private static final String REASON = "reason";

  static ResetPage of(
      Account account,
      FactorStanding standing,
      String typed,
      Optional<String> fault,
      String notice) {
    Faults faults =
        fault.map(text -> new Faults(List.of(new Fault(REASON, text)))).orElse(Faults.NONE);
    return new ResetPage(
        "/people/" + account.id(),
        account.fullName(),
        standing.hasAuthenticator(),
        standing.recoveryCodes(),
        standing.passkeys().size(),
        standing.isSetUp(),
        Field.of(Field.Kind.TEXT, REASON, "Reason")
            .withHint("What happened to the device, and how you know who asks.")
            .withValue(typed)
            .withFaults(faults),
        notice,
        faults);
  }
}
