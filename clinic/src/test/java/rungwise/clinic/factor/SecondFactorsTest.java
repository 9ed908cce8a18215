package rungwise.clinic.factor;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import rungwise.clinic.factor.FactorEvent.Kind;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountEvent;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.InMemoryPeople;
import rungwise.clinic.people.OneTimeCode;
import rungwise.clinic.people.PasswordHashing;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInName;
import rungwise.quantities.Reading;

class SecondFactorsTest {

  private static final Duration STEP = Duration.ofSeconds(30);
  private static final Account ADMINISTRATOR = account(1, "ines", Role.ADMINISTRATOR);
  private static final Account PRESCRIBER = account(2, "tobias", Role.PRESCRIBER);

  private final InMemoryPeople people = new InMemoryPeople();
  private final InMemoryFactors stored = new InMemoryFactors();
  private Instant now = Instant.parse("2026-03-02T09:00:10Z");
  private final AtomicInteger codes = new AtomicInteger();
  private final FactorPorts ports =
      new FactorPorts(
          stored,
          people,
          new ReadableHashing(),
          this::nextCode,
          () -> new FactorSecret("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ"),
          () -> now,
          people);
  private final SecondFactors factors = new SecondFactors(ports);
  private final PasskeyUse passkeys = new PasskeyUse(ports);

  SecondFactorsTest() {
    for (Account account : List.of(ADMINISTRATOR, PRESCRIBER)) {
      people.append(new AccountEvent(AccountEvent.Kind.PASSWORD_SET, account, account.id(), now));
    }
  }

  private static Account account(int number, String name, Role role) {
    return new Account(
        AccountId.of(new UUID(1, number)),
        new SignInName(name),
        "Name of " + name,
        Set.of(role),
        AccountState.ACTIVE);
  }

  /** A hashing that can be read back. */
  private static final class ReadableHashing implements PasswordHashing {
    @Override
    public String hash(String secret) {
      return new StringBuilder(secret).reverse().toString();
    }

    @Override
    public boolean matches(String secret, String hash) {
      return hash(secret).equals(hash);
    }
  }

  private OneTimeCode nextCode() {
    var bytes = new byte[OneTimeCode.BYTES];
    bytes[0] = (byte) codes.incrementAndGet();
    return OneTimeCode.of(bytes);
  }

  private void pass(Duration time) {
    now = now.plus(time);
  }

  private String codeIn(Duration fromNow) {
    long step = TimeCode.stepAt(now.plus(fromNow));
    return TimeCode.at(factors.newSecret(), step);
  }

  private List<OneTimeCode> setUp() {
    FactorSecret secret = factors.newSecret();
    return factors.setUp(PRESCRIBER, secret, codeIn(Duration.ZERO)).orThrow();
  }

  private List<Kind> kinds() {
    return stored.events().stream().map(FactorEvent::kind).toList();
  }

  @Test
  void a_secret_is_in_use_only_after_a_code_of_it_was_given() {
    Reading<List<OneTimeCode>> wrong = factors.setUp(PRESCRIBER, factors.newSecret(), "000000");

    assertThat(wrong.faults()).hasSize(1);
    assertThat(factors.standing(PRESCRIBER.id()).isSetUp()).isFalse();

    assertThat(setUp()).hasSize(SecondFactors.RECOVERY_CODES).doesNotHaveDuplicates();
    assertThat(factors.standing(PRESCRIBER.id()))
        .isEqualTo(new FactorStanding(true, SecondFactors.RECOVERY_CODES, List.of()));
    assertThat(kinds()).containsExactly(Kind.AUTHENTICATOR_SET_UP, Kind.RECOVERY_CODES_MADE);
  }

  @Test
  void a_code_is_accepted_once_and_never_one_before_it() {
    setUp();
    pass(STEP.multipliedBy(3));
    String code = codeIn(Duration.ZERO);
    String earlier = codeIn(STEP.negated());

    assertThat(factors.isProvenBy(PRESCRIBER, code)).isTrue();
    assertThat(factors.isProvenBy(PRESCRIBER, code)).isFalse();
    assertThat(factors.isProvenBy(PRESCRIBER, earlier)).isFalse();
    pass(STEP);
    assertThat(factors.isProvenBy(PRESCRIBER, codeIn(Duration.ZERO))).isTrue();
  }

  @Test
  void the_code_that_set_a_secret_up_is_used() {
    setUp();

    assertThat(factors.isProvenBy(PRESCRIBER, codeIn(Duration.ZERO))).isFalse();
  }

  @Test
  void the_window_is_one_step_to_each_side_and_no_more() {
    for (int steps = -3; steps <= 3; steps++) {
      stored.removeAll(PRESCRIBER.id());
      setUp();
      pass(Duration.ofHours(1));

      boolean isAccepted = factors.isProvenBy(PRESCRIBER, codeIn(STEP.multipliedBy(steps)));

      assertThat(isAccepted).as("%d steps from now", steps).isEqualTo(Math.abs(steps) <= 1);
    }
  }

  @Test
  void a_code_may_be_typed_with_a_space_in_the_middle() {
    setUp();
    pass(STEP);
    String code = codeIn(Duration.ZERO);

    assertThat(factors.isProvenBy(PRESCRIBER, code.substring(0, 3) + " " + code.substring(3)))
        .isTrue();
  }

  @Test
  void who_has_set_nothing_up_proves_nothing() {
    assertThat(factors.isProvenBy(PRESCRIBER, codeIn(Duration.ZERO))).isFalse();
    assertThat(factors.isProvenBy(PRESCRIBER, "")).isFalse();
    assertThat(kinds()).containsExactly(Kind.SECOND_FACTOR_REFUSED, Kind.SECOND_FACTOR_REFUSED);
  }

  @Test
  void each_recovery_code_is_good_once() {
    List<OneTimeCode> recovery = setUp();

    for (OneTimeCode code : recovery) {
      assertThat(factors.isProvenBy(PRESCRIBER, code.text().toLowerCase(Locale.ROOT))).isTrue();
      assertThat(factors.isProvenBy(PRESCRIBER, code.text())).isFalse();
    }
    assertThat(factors.standing(PRESCRIBER.id()).recoveryCodes()).isZero();
    assertThat(kinds()).contains(Kind.RECOVERY_CODE_USED);
  }

  @Test
  void new_recovery_codes_end_the_earlier_ones() {
    OneTimeCode before = setUp().getFirst();

    OneTimeCode after = factors.newRecoveryCodes(PRESCRIBER).getFirst();

    assertThat(factors.isProvenBy(PRESCRIBER, before.text())).isFalse();
    assertThat(factors.isProvenBy(PRESCRIBER, after.text())).isTrue();
  }

  @Test
  void recovery_codes_are_not_stored_as_they_are_shown() {
    List<OneTimeCode> recovery = setUp();

    assertThat(stored.recoveryCodes(PRESCRIBER.id()))
        .doesNotContainAnyElementsOf(recovery.stream().map(OneTimeCode::text).toList());
  }

  @Test
  void an_administrator_resets_a_lost_device_with_a_reason_that_is_on_record() {
    setUp();
    passkeys.add(PRESCRIBER, "k1", "desk", "a2V5", 0).orThrow();

    factors.reset(ADMINISTRATOR, PRESCRIBER.id(), " telephone lost, known by face ").orThrow();

    assertThat(factors.standing(PRESCRIBER.id()))
        .isEqualTo(new FactorStanding(false, 0, List.of()));
    assertThat(stored.events().getLast())
        .isEqualTo(
            new FactorEvent(
                Kind.SECOND_FACTOR_RESET,
                PRESCRIBER.id(),
                ADMINISTRATOR.id(),
                now,
                Optional.of("telephone lost, known by face")));
  }

  @Test
  void nobody_else_resets_and_nobody_without_a_reason() {
    setUp();

    assertThat(factors.reset(PRESCRIBER, PRESCRIBER.id(), "lost").faults()).hasSize(1);
    assertThat(factors.reset(ADMINISTRATOR, PRESCRIBER.id(), "  ").faults()).hasSize(1);
    assertThat(factors.reset(ADMINISTRATOR, ADMINISTRATOR.id(), "lost").faults()).hasSize(1);
    assertThat(factors.standing(PRESCRIBER.id()).isSetUp()).isTrue();
  }

  @Test
  void a_passkey_counts_for_its_holder_only_and_not_after_it_was_removed() {
    passkeys.add(PRESCRIBER, "k1", "desk", "a2V5", 0).orThrow();

    assertThat(passkeys.isProvenBy(PRESCRIBER, "k1", 1)).isTrue();
    assertThat(passkeys.isProvenBy(ADMINISTRATOR, "k1", 2)).isFalse();
    assertThat(passkeys.signIn("k1", 3).map(Account::id)).contains(PRESCRIBER.id());

    passkeys.remove(ADMINISTRATOR, "k1");
    assertThat(passkeys.find("k1")).isPresent();
    passkeys.remove(PRESCRIBER, "k1");
    assertThat(passkeys.isProvenBy(PRESCRIBER, "k1", 4)).isFalse();
    assertThat(passkeys.signIn("k1", 5)).isEmpty();
  }

  @Test
  void a_passkey_of_an_account_that_is_ended_signs_nobody_in() {
    passkeys.add(PRESCRIBER, "k1", "desk", "a2V5", 0).orThrow();
    people.append(
        new AccountEvent(
            AccountEvent.Kind.ACCOUNT_DEACTIVATED,
            PRESCRIBER.withState(AccountState.DEACTIVATED),
            ADMINISTRATOR.id(),
            now));

    assertThat(passkeys.signIn("k1", 1)).isEmpty();
    assertThat(people.attempts()).hasSize(1);
  }

  @Test
  void a_passkey_needs_a_name_of_its_own_line_and_is_added_once() {
    assertThat(passkeys.add(PRESCRIBER, "k1", "  ", "a2V5", 0).faults()).hasSize(1);
    passkeys.add(PRESCRIBER, "k1", "desk", "a2V5", 0).orThrow();
    assertThat(passkeys.add(ADMINISTRATOR, "k1", "desk", "a2V5", 0).faults()).hasSize(1);
    for (int number = 2; number <= PasskeyUse.MOST; number++) {
      passkeys.add(PRESCRIBER, "k" + number, "desk", "a2V5", 0).orThrow();
    }
    assertThat(passkeys.add(PRESCRIBER, "one more", "desk", "a2V5", 0).faults()).hasSize(1);
  }
}
