package rungwise.clinic.people;

import java.util.List;
import java.util.Optional;

/** Port: the accounts as they are now, and the events that made them so. Nothing is removed. */
public interface Accounts {

  /** Every account, deactivated ones too, by sign-in name. */
  List<Account> all();

  Optional<Account> find(AccountId id);

  Optional<Account> named(SignInName name);

  /**
   * Keeps an event; from then on the account is as the event says.
   *
   * @throws IllegalStateException if the event changes an account's sign-in name, or gives it a
   *     name that another account has
   */
  void append(AccountEvent event);

  void append(SignInAttempt attempt);
}
