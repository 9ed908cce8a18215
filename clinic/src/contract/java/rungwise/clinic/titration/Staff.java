package rungwise.clinic.titration;

import java.util.Set;
import java.util.UUID;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInName;

/** One invented person for each role that a course knows. */
public final class Staff {

  public static final Account PRESCRIBER = account(1, "pia.prescriber", Role.PRESCRIBER);
  public static final Account EDUCATOR = account(2, "eva.educator", Role.NURSE_EDUCATOR);
  public static final Account ON_CALL = account(3, "oda.oncall", Role.ON_CALL_CLINICIAN);
  public static final Account AUDITOR = account(4, "ada.auditor", Role.AUDITOR);

  public static final Account LEAD = account(5, "lea.lead", Role.PROGRAMME_LEAD);

  private Staff() {}

  private static Account account(int number, String name, Role role) {
    return new Account(
        AccountId.of(new UUID(9, number)),
        new SignInName(name),
        "Name of " + name,
        Set.of(role),
        AccountState.ACTIVE);
  }
}
