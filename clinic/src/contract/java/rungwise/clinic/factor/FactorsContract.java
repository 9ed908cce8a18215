package rungwise.clinic.factor;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rungwise.clinic.Transactions;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInName;

/** What every adapter of {@link Factors} keeps to. */
public abstract class FactorsContract {

  private static final Instant NOW = Instant.parse("2026-03-02T09:00:00.123Z");
  protected static final Account ANA = account(1, "ana.ruiz");
  protected static final Account BEN = account(2, "ben");
  private static final FactorSecret FIRST = FactorSecret.of(new byte[FactorSecret.BYTES]);
  private static final FactorSecret SECOND = new FactorSecret("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ");

  /** An adapter that knows the two accounts. */
  protected abstract Factors factors();

  protected abstract Transactions transactions();

  private static Account account(int number, String name) {
    return new Account(
        AccountId.of(new UUID(1, number)),
        new SignInName(name),
        "Name of " + name,
        Set.of(Role.PRESCRIBER),
        AccountState.ACTIVE);
  }

  private static Passkey passkey(String id, Account holder, long count) {
    return new Passkey(id, holder.id(), "desk", "a2V5", count, NOW);
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
  void a_secret_comes_back_and_is_replaced_by_the_next() {
    run(() -> factors().put(new TimeSecret(ANA.id(), FIRST, 7)));
    run(() -> factors().put(new TimeSecret(ANA.id(), SECOND, 8)));

    assertThat(factors().timeSecret(ANA.id())).contains(new TimeSecret(ANA.id(), SECOND, 8));
    assertThat(factors().timeSecret(BEN.id())).isEmpty();
  }

  @Test
  void recovery_codes_are_replaced_as_a_whole() {
    run(() -> factors().putRecoveryCodes(ANA.id(), List.of("a", "b", "c")));
    run(() -> factors().putRecoveryCodes(BEN.id(), List.of("d")));
    run(() -> factors().putRecoveryCodes(ANA.id(), List.of("c", "a")));

    assertThat(factors().recoveryCodes(ANA.id())).containsExactly("c", "a");
    assertThat(factors().recoveryCodes(BEN.id())).containsExactly("d");
  }

  @Test
  void passkeys_are_found_by_id_and_by_holder() {
    run(() -> factors().put(passkey("k1", ANA, 0)));
    run(() -> factors().put(passkey("k2", BEN, 0)));
    run(() -> factors().put(passkey("k1", ANA, 5)));

    assertThat(factors().passkey("k1")).contains(passkey("k1", ANA, 5));
    assertThat(factors().passkeys(ANA.id())).containsExactly(passkey("k1", ANA, 5));

    run(() -> factors().removePasskey("k1"));

    assertThat(factors().passkey("k1")).isEmpty();
    assertThat(factors().passkeys(BEN.id())).hasSize(1);
  }

  @Test
  void all_of_one_holder_is_forgotten_and_nothing_of_another() {
    for (Account holder : List.of(ANA, BEN)) {
      run(
          () -> {
            factors().put(new TimeSecret(holder.id(), FIRST, 1));
            factors().putRecoveryCodes(holder.id(), List.of("a"));
            factors().put(passkey("of " + holder.signInName(), holder, 0));
          });
    }

    run(() -> factors().removeAll(ANA.id()));

    assertThat(factors().timeSecret(ANA.id())).isEmpty();
    assertThat(factors().recoveryCodes(ANA.id())).isEmpty();
    assertThat(factors().passkeys(ANA.id())).isEmpty();
    assertThat(factors().timeSecret(BEN.id())).isPresent();
    assertThat(factors().recoveryCodes(BEN.id())).hasSize(1);
    assertThat(factors().passkeys(BEN.id())).hasSize(1);
  }

  @Test
  void every_kind_of_event_can_be_kept() {
    for (FactorEvent.Kind kind : FactorEvent.Kind.values()) {
      run(
          () ->
              factors()
                  .append(
                      new FactorEvent(
                          kind, ANA.id(), BEN.id(), NOW, Optional.of("lost telephone"))));
    }
  }
}
