package rungwise.web.secrets;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class TryLimiterTest {

  private static final String HOME = "192.0.2.1";
  private static final int FROM_ONE_DESK = 6;
  private static final int FROM_ANYWHERE = 30;

  private final AtomicReference<Instant> now =
      new AtomicReference<>(Instant.parse("2026-03-02T08:00:00Z"));
  private final InstantSource clock = now::get;
  private final TryLimiter limiter = new TryLimiter(clock);

  private static String address(int host) {
    return "198.51.100." + host;
  }

  @Test
  void six_tries_for_one_name_from_one_address_are_free_and_the_seventh_waits() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      assertThat(limiter.tryOnce(HOME, "ana")).isEmpty();
    }

    assertThat(limiter.tryOnce(HOME, "ana")).hasValue(Duration.ofSeconds(20));
  }

  @Test
  void another_name_at_the_same_desk_is_not_held_up() {
    for (int tries = 0; tries <= FROM_ONE_DESK; tries++) {
      limiter.tryOnce(HOME, "ana");
    }

    assertThat(limiter.tryOnce(HOME, "ben")).isEmpty();
  }

  @Test
  void one_address_cannot_try_many_names() {
    for (int name = 0; name < FROM_ANYWHERE; name++) {
      assertThat(limiter.tryOnce(HOME, "name" + name)).isEmpty();
    }

    assertThat(limiter.tryOnce(HOME, "one-more")).hasValue(Duration.ofSeconds(5));
  }

  @Test
  void many_addresses_cannot_try_one_name() {
    for (int host = 0; host < FROM_ANYWHERE; host++) {
      assertThat(limiter.tryOnce(address(host), "ana")).isEmpty();
    }

    assertThat(limiter.tryOnce(address(FROM_ANYWHERE), "ana")).hasValue(Duration.ofSeconds(30));
  }

  @Test
  void strangers_who_try_a_name_do_not_lock_its_owner_out_of_the_usual_desk() {
    limiter.tryOnce(HOME, "ana");
    limiter.prove(HOME, "ana");
    for (int host = 0; host < 100; host++) {
      limiter.tryOnce(address(host), "ana");
    }

    assertThat(limiter.tryOnce(HOME, "ana")).isEmpty();
  }

  @Test
  void a_success_gives_the_tries_back() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      limiter.tryOnce(HOME, "ana");
    }

    limiter.prove(HOME, "ana");

    assertThat(limiter.tryOnce(HOME, "ana")).isEmpty();
  }

  @Test
  void a_busy_clinic_behind_one_address_is_not_held_up() {
    for (int person = 0; person < FROM_ANYWHERE * 2; person++) {
      assertThat(limiter.tryOnce(HOME, "person" + person)).isEmpty();
      limiter.prove(HOME, "person" + person);
    }
  }

  @Test
  void waiting_earns_one_try_at_a_time() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      limiter.tryOnce(HOME, "ana");
    }
    now.updateAndGet(before -> before.plusSeconds(20));

    assertThat(limiter.tryOnce(HOME, "ana")).isEmpty();
    assertThat(limiter.tryOnce(HOME, "ana")).isPresent();
  }

  @Test
  void one_household_has_one_address_however_many_it_uses_of_its_network() {
    for (int host = 0; host < FROM_ONE_DESK; host++) {
      limiter.tryOnce("2001:db8:1:2::" + host, "ana");
    }

    assertThat(limiter.tryOnce("2001:db8:1:2:ffff::1", "ana")).isPresent();
    assertThat(limiter.tryOnce("2001:db8:1:3::1", "ana")).isEmpty();
  }

  @Test
  void endless_names_are_counted_as_one() {
    for (int tries = 0; tries < FROM_ONE_DESK; tries++) {
      limiter.tryOnce(HOME, "a".repeat(100 + tries));
    }

    assertThat(limiter.tryOnce(HOME, "a".repeat(50))).isPresent();
  }

  @Test
  void a_full_memory_forgets_what_was_longest_unused() {
    var recent = new Recent<String, Integer>(2);
    recent.put("a", 1);
    recent.put("b", 2);
    recent.find("a");
    recent.put("c", 3);

    assertThat(recent.find("b")).isEmpty();
    assertThat(recent.find("a")).hasValue(1);
    assertThat(recent.find("c")).hasValue(3);
  }
}
