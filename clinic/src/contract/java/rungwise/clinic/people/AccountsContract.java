package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rungwise.clinic.Transactions;

/** What every adapter of {@link Accounts} and {@link Credentials} keeps to. */
public abstract class AccountsContract {

  private static final Instant NOW = Instant.parse("2026-03-02T09:00:00Z");

  protected abstract Accounts accounts();

  protected abstract Credentials credentials();

  protected abstract Transactions transactions();

  private static Account account(int number, String name, Role... roles) {
    return new Account(
        AccountId.of(new UUID(1, number)),
        new SignInName(name),
        "Name of " + name,
        Set.of(roles),
        AccountState.INVITED);
  }

  private void append(AccountEvent.Kind kind, Account after) {
    run(() -> accounts().append(new AccountEvent(kind, after, after.id(), NOW)));
  }

  private void run(Runnable work) {
    transactions()
        .inTransaction(
            () -> {
              work.run();
              return Optional.empty();
            });
  }

  @Test
  void a_new_store_has_no_account() {
    assertThat(accounts().all()).isEmpty();
    assertThat(accounts().find(AccountId.of(new UUID(1, 1)))).isEmpty();
    assertThat(accounts().named(new SignInName("ana.ruiz"))).isEmpty();
  }

  @Test
  void an_account_is_found_by_its_id_and_by_its_name() {
    Account ana = account(1, "ana.ruiz", Role.PRESCRIBER, Role.ADMINISTRATOR);

    append(AccountEvent.Kind.ACCOUNT_INVITED, ana);

    assertThat(accounts().find(ana.id())).contains(ana);
    assertThat(accounts().named(ana.signInName())).contains(ana);
  }

  @Test
  void an_account_is_as_its_last_event_says() {
    Account ana = account(1, "ana.ruiz", Role.PRESCRIBER);
    Account changed = ana.withRoles(Set.of(Role.AUDITOR)).withState(AccountState.DEACTIVATED);

    append(AccountEvent.Kind.ACCOUNT_INVITED, ana);
    append(AccountEvent.Kind.ROLES_CHANGED, ana.withRoles(Set.of(Role.AUDITOR)));
    append(AccountEvent.Kind.ACCOUNT_DEACTIVATED, changed);

    assertThat(accounts().find(ana.id())).contains(changed);
    assertThat(accounts().all()).containsExactly(changed);
  }

  @Test
  void accounts_are_listed_by_sign_in_name() {
    Account zoe = account(1, "zoe", Role.AUDITOR);
    Account ana = account(2, "ana.ruiz", Role.PRESCRIBER);

    append(AccountEvent.Kind.ACCOUNT_INVITED, zoe);
    append(AccountEvent.Kind.ACCOUNT_INVITED, ana);

    assertThat(accounts().all()).containsExactly(ana, zoe);
  }

  @Test
  void two_accounts_never_share_a_sign_in_name() {
    append(AccountEvent.Kind.ACCOUNT_INVITED, account(1, "ana.ruiz", Role.PRESCRIBER));
    Account other = account(2, "ana.ruiz", Role.AUDITOR);

    assertThatThrownBy(() -> append(AccountEvent.Kind.ACCOUNT_INVITED, other))
        .isInstanceOf(IllegalStateException.class);

    assertThat(accounts().find(other.id())).isEmpty();
  }

  @Test
  void an_account_never_changes_its_sign_in_name() {
    append(AccountEvent.Kind.ACCOUNT_INVITED, account(1, "ana.ruiz", Role.PRESCRIBER));
    Account renamed = account(1, "ana.diaz", Role.PRESCRIBER);

    assertThatThrownBy(() -> append(AccountEvent.Kind.ROLES_CHANGED, renamed))
        .isInstanceOf(IllegalStateException.class);
  }

  @Test
  void what_a_failed_transaction_wrote_is_gone() {
    Account ana = account(1, "ana.ruiz", Role.PRESCRIBER);
    var code = new Credential(ana.id(), Credential.Kind.CODE, "hash", Optional.of(NOW));

    assertThatThrownBy(
            () ->
                run(
                    () -> {
                      accounts()
                          .append(
                              new AccountEvent(
                                  AccountEvent.Kind.ACCOUNT_INVITED, ana, ana.id(), NOW));
                      credentials().put(code);
                      throw new IllegalArgumentException("on purpose");
                    }))
        .hasMessage("on purpose");

    assertThat(accounts().all()).isEmpty();
    assertThat(credentials().find(ana.id(), Credential.Kind.CODE)).isEmpty();
  }

  @Test
  void a_credential_is_replaced_by_the_next_of_its_kind_only() {
    AccountId holder = AccountId.of(new UUID(1, 1));
    var password = new Credential(holder, Credential.Kind.PASSWORD, "first", Optional.empty());
    var code = new Credential(holder, Credential.Kind.CODE, "second", Optional.of(NOW));
    var later = new Credential(holder, Credential.Kind.CODE, "third", Optional.empty());

    run(() -> credentials().put(password));
    run(() -> credentials().put(code));
    run(() -> credentials().put(later));

    assertThat(credentials().find(holder, Credential.Kind.PASSWORD)).contains(password);
    assertThat(credentials().find(holder, Credential.Kind.CODE)).contains(later);
  }

  @Test
  void a_removed_credential_is_gone_and_removing_it_again_does_nothing() {
    var code = new Credential(AccountId.PROGRAM, Credential.Kind.CODE, "hash", Optional.of(NOW));
    run(() -> credentials().put(code));

    run(() -> credentials().remove(AccountId.PROGRAM, Credential.Kind.CODE));
    run(() -> credentials().remove(AccountId.PROGRAM, Credential.Kind.CODE));

    assertThat(credentials().find(AccountId.PROGRAM, Credential.Kind.CODE)).isEmpty();
  }
}
