package rungwise.web.people;

import java.util.Optional;
import java.util.Set;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Role;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;

/**
 * One account as shown to an administrator.
 *
 * @param path address of the page
 * @param code a code that was just made, on this one view only
 * @param notice what was just done; may be empty
 */
public record AccountPage(
    String path,
    String fullName,
    String signInName,
    String state,
    boolean isDeactivated,
    Choice roles,
    Optional<ShownCode> code,
    String notice,
    Faults faults) {

  /** A one-time code, shown once, and until when it works. */
  public record ShownCode(String text, String goodUntil) {}

  static String pathOf(Account account) {
    return "/people/" + account.id();
  }

  static AccountPage of(Account account) {
    return new AccountPage(
        pathOf(account),
        account.fullName(),
        account.signInName().text(),
        account.state().words(),
        account.state() == AccountState.DEACTIVATED,
        RoleChoice.of(account.roles()),
        Optional.empty(),
        "",
        Faults.NONE);
  }

  AccountPage with(Optional<ShownCode> shown, String done) {
    return new AccountPage(
        path, fullName, signInName, state, isDeactivated, roles, shown, done, faults);
  }

  AccountPage refused(Set<Role> picked, Faults found) {
    Choice choice = RoleChoice.of(picked).withFaults(found);
    return new AccountPage(
        path, fullName, signInName, state, isDeactivated, choice, code, notice, found);
  }
}
