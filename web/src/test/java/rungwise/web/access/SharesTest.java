package rungwise.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rungwise.clinic.people.AccountId;

final class SharesTest {

  private static final AccountId ANA = AccountId.of(new UUID(1, 1));
  private static final AccountId BEN = AccountId.of(new UUID(1, 2));

  private long now = 0;
  private final Shares shares = new Shares(() -> now);

  private void pass(Duration time) {
    now += time.toNanos();
  }

  /** Pages without a pause; gives how many were answered. */
  private int reload(AccountId who, Duration each, Duration whole) {
    int answered = 0;
    for (long end = now + whole.toNanos(); now < end; ) {
      long begun = shares.begin();
      if (shares.mayAsk(who)) {
        pass(each);
        shares.end(who, begun);
        answered++;
      } else {
        pass(Duration.ofMillis(100));
      }
    }
    return answered;
  }

  @Test
  void who_reloads_without_a_pause_has_two_minutes_and_then_half_of_the_time() {
    Duration page = Duration.ofMillis(500);

    int first = reload(ANA, page, Duration.ofMinutes(4));
    int later = reload(ANA, page, Duration.ofMinutes(10));

    assertThat(page.multipliedBy(first)).isBetween(Duration.ofMinutes(3), Duration.ofMinutes(4));
    assertThat(page.multipliedBy(later)).isBetween(Duration.ofMinutes(4), Duration.ofMinutes(6));
  }

  @Test
  void nobody_else_is_held_back_by_it() {
    reload(ANA, Duration.ofMillis(500), Duration.ofMinutes(10));

    assertThat(shares.mayAsk(BEN)).isTrue();
  }

  @Test
  void who_works_is_never_held_back_a_page_of_two_seconds_every_five_all_day() {
    for (int page = 0; page < 8 * 60 * 12; page++) {
      assertThat(shares.mayAsk(ANA)).as("page %s", page).isTrue();
      long begun = shares.begin();
      pass(Duration.ofSeconds(2));
      shares.end(ANA, begun);
      pass(Duration.ofSeconds(3));
    }
  }

  @Test
  void what_was_used_up_comes_back() {
    reload(ANA, Duration.ofSeconds(1), Duration.ofMinutes(10));
    pass(Duration.ofSeconds(4));

    assertThat(shares.mayAsk(ANA)).isTrue();
  }
}
