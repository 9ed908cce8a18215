package rungwise.clinic.people;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/**
 * A person who works with the program, as the others know him or her. Holds no secret.
 *
 * @param fullName 1 to 100 characters on one line
 * @param roles at least one, in the order of {@link Role}
 */
public record Account(
    AccountId id, SignInName signInName, String fullName, Set<Role> roles, AccountState state) {

  public Account {
    if (id.equals(AccountId.PROGRAM)) {
      throw new IllegalArgumentException("bug: an account of the program itself");
    }
    if (!FullName.isAccepted(fullName)) {
      throw new IllegalArgumentException("bug: a full name that was not read");
    }
    if (roles.isEmpty()) {
      throw new IllegalArgumentException("bug: an account without a role");
    }
    roles = Collections.unmodifiableSet(EnumSet.copyOf(roles));
  }

  public boolean isActive() {
    return state == AccountState.ACTIVE;
  }

  /** Whether this account may act in a role now: it has the role and is active. */
  public boolean may(Role role) {
    return isActive() && roles.contains(role);
  }

  public Account withRoles(Set<Role> changed) {
    return new Account(id, signInName, fullName, changed, state);
  }

  public Account withState(AccountState changed) {
    return new Account(id, signInName, fullName, roles, changed);
  }
}
