package rungwise.web.access;

import java.util.Set;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;

/** Who may use a route. */
public sealed interface Access {

  /** Anybody, signed in or not. */
  record Anyone() implements Access {}

  /** Every active account, whatever its roles. */
  record SignedIn() implements Access {}

  /** An active account that has at least one of these roles. */
  record AnyOf(Set<Role> roles) implements Access {
    public AnyOf {
      roles = Set.copyOf(roles);
      if (roles.isEmpty()) {
        throw new IllegalArgumentException("bug: a route that nobody may use");
      }
    }
  }

  /** Whether an active account may pass. */
  default boolean admits(Account account) {
    return switch (this) {
      case Anyone anyone -> true;
      case SignedIn signedIn -> account.isActive();
      case AnyOf anyOf -> anyOf.roles().stream().anyMatch(account::may);
    };
  }
}
