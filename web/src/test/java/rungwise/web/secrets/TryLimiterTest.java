package rungwise.web.secrets;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import rungwise.web.secrets.Refusal.Because;

class TryLimiterTest {

  private static final String HOME = "192.0.2.1";
  private static final String DEVICE = "0f";
  private static final int FROM_ONE_DESK = 6;
  private static final int FROM_ANYWHERE = 30;

  private final AtomicReference<Instant> now =
      new AtomicReference<>(Instant.parse("2026-03-02T08:00:00Z"));
  private final TryLimiter limiter = new TryLimiter(SteadyTime.beside(now::get), "ana"::equals);

  private static String address(int host) {
    return "198.51." + host / 250 + "." + host % 250;
  }

  private Optional<Refusal> tryFrom(String address, String name) {
    return limiter.tryPassword(address, name, Optional.empty());
  }

  private Optional<Refusal> tryAtTheDesk(String name) {
    return limiter.tryPassword(HOME, name, Optional.of(DEVICE));
  }

  private static Refusal waiting(int seconds) {
    return new Refusal(Because.TOO_OFTEN, Duration.ofSeconds(seconds));
  }

  private void later(Duration time) {
    now.updateAndGet(before -> before.plus(time));
  }

  @Test
  void six_tries_for_one_name_from_one_address_are_free_and_the_seventh_waits() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      assertThat(tryFrom(HOME, "ana")).isEmpty();
    }

    assertThat(tryFrom(HOME, "ana")).hasValue(waiting(20));
  }

  @Test
  void another_name_at_the_same_desk_is_not_held_up() {
    for (int tries = 0; tries <= FROM_ONE_DESK; tries++) {
      tryFrom(HOME, "ana");
    }

    assertThat(tryFrom(HOME, "ben")).isEmpty();
  }

  @Test
  void one_address_cannot_try_many_names() {
    for (int name = 0; name < FROM_ANYWHERE; name++) {
      assertThat(tryFrom(HOME, "name" + name)).isEmpty();
    }

    assertThat(tryFrom(HOME, "one-more")).hasValue(waiting(5));
  }

  @Test
  void many_addresses_cannot_try_one_name() {
    for (int host = 0; host < FROM_ANYWHERE; host++) {
      assertThat(tryFrom(address(host), "ana")).isEmpty();
    }

    assertThat(tryFrom(address(FROM_ANYWHERE), "ana")).hasValue(waiting(30));
  }

  @Test
  void tries_that_are_refused_use_up_nothing_of_the_name() {
    for (int tries = 0; tries < 1000; tries++) {
      tryFrom(address(1), "ana");
    }

    assertThat(tryFrom(address(2), "ana")).isEmpty();
  }

  @Test
  void a_thousand_addresses_do_not_lock_the_owner_out_of_a_device_that_is_known() {
    for (int second = 0; second < 60; second++) {
      for (int tries = 0; tries < 50; tries++) {
        tryFrom(address((second * 50 + tries) % 1000), "ana");
      }
      later(Duration.ofSeconds(1));
      assertThat(tryAtTheDesk("ana")).as("second %s", second).isEmpty();
      limiter.prove(HOME, "ana", Optional.of(DEVICE));
    }
  }

  @Test
  void a_device_is_known_for_the_names_that_signed_in_there_and_held_up_by_its_own_tries() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      assertThat(tryAtTheDesk("ana")).isEmpty();
    }

    assertThat(tryAtTheDesk("ana")).hasValue(waiting(20));
    assertThat(limiter.tryPassword(HOME, "ana", Optional.of("1e"))).isEmpty();
  }

  @Test
  void at_most_100_wrong_passwords_in_a_row_are_taken_from_unknown_devices() {
    int taken = 0;
    for (int tries = 0; tries < 300; tries++) {
      taken += tryFrom(address(tries), "ana").isEmpty() ? 1 : 0;
      later(Duration.ofSeconds(30));
    }

    assertThat(taken).isEqualTo(100);
    assertThat(tryFrom(address(999), "ana").map(Refusal::because)).hasValue(Because.UNKNOWN_DEVICE);
    assertThat(tryFrom(address(999), "ben")).isEmpty();
    assertThat(tryAtTheDesk("ana")).isEmpty();
  }

  @Test
  void a_name_that_nobody_has_is_answered_like_one_that_somebody_has() {
    for (int tries = 0; tries < 300; tries++) {
      assertThat(tryFrom(address(tries), "nobody")).isEqualTo(tryFrom(address(tries), "ana"));
      later(Duration.ofSeconds(30));
    }
  }

  @Test
  void whoever_gets_in_opens_the_name_for_unknown_devices_again() {
    for (int tries = 0; tries < 200; tries++) {
      tryFrom(address(tries), "ana");
      later(Duration.ofSeconds(30));
    }

    limiter.provePasskey(HOME, "ana");

    assertThat(tryFrom(address(999), "ana")).isEmpty();
  }

  @Test
  void after_100_wrong_passwords_in_a_row_a_device_counts_as_unknown() {
    for (int tries = 0; tries < 100; tries++) {
      assertThat(tryAtTheDesk("ana")).isEmpty();
      later(Duration.ofSeconds(20));
    }
    for (int tries = 0; tries < FROM_ANYWHERE; tries++) {
      tryFrom(address(tries), "ana");
    }

    assertThat(tryAtTheDesk("ana")).hasValue(waiting(30));
  }

  @Test
  void wrong_passwords_hold_up_neither_a_passkey_nor_a_code() {
    for (int tries = 0; tries < 1000; tries++) {
      tryFrom(address(tries), "ana");
    }

    assertThat(limiter.tryPasskey(HOME)).isEmpty();
    assertThat(limiter.tryCode(HOME, "ana")).isEmpty();
  }

  @Test
  void a_success_gives_the_tries_back() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      tryFrom(HOME, "ana");
    }

    limiter.prove(HOME, "ana", Optional.empty());

    assertThat(tryFrom(HOME, "ana")).isEmpty();
  }

  @Test
  void a_busy_clinic_behind_one_address_is_not_held_up() {
    for (int person = 0; person < FROM_ANYWHERE * 2; person++) {
      assertThat(tryFrom(HOME, "person" + person)).isEmpty();
      limiter.prove(HOME, "person" + person, Optional.empty());
    }
  }

  @Test
  void waiting_earns_one_try_at_a_time() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      tryFrom(HOME, "ana");
    }
    later(Duration.ofSeconds(20));

    assertThat(tryFrom(HOME, "ana")).isEmpty();
    assertThat(tryFrom(HOME, "ana")).isPresent();
  }

  @Test
  void one_household_has_one_address_however_many_it_uses_of_its_network() {
    for (int host = 0; host < FROM_ONE_DESK; host++) {
      tryFrom("2001:db8:1:2::" + host, "ana");
    }

    assertThat(tryFrom("2001:db8:1:2:ffff::1", "ana")).isPresent();
    assertThat(tryFrom("2001:db8:1:3::1", "ana")).isEmpty();
  }

  @Test
  void endless_names_are_counted_as_one() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      tryFrom(HOME, "a".repeat(100 + tries));
    }

    assertThat(tryFrom(HOME, "a".repeat(50))).isPresent();
  }

  @Test
  void however_many_names_strangers_make_up_none_is_forgotten() {
    for (int tries = 0; tries < FROM_ANYWHERE; tries++) {
      tryFrom(address(tries), "ana");
    }
    for (int name = 0; name < 40_000; name++) {
      tryFrom(address(100 + name), "name" + name);
    }

    assertThat(tryFrom(address(99), "ana")).isPresent();
  }
}
