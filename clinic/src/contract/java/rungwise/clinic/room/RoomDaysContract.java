package rungwise.clinic.room;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.people.AccountId;

/** What every adapter of {@link RoomDays} keeps to. */
public abstract class RoomDaysContract {

  private static final Instant NOW = Instant.parse("2026-03-02T09:00:00.123Z");
  private static final AccountId BY = AccountId.of(new UUID(1, 1));
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

  private CoursePorts stored;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    stored = open();
  }

  private void close(LocalDate day) {
    stored.run(() -> stored.roomDays().close(day, BY, NOW));
  }

  @Test
  void a_new_store_has_no_closed_day() {
    assertThat(stored.roomDays().lastClosed()).isEmpty();
  }

  @Test
  void the_latest_day_counts_in_whatever_order_the_days_were_closed() {
    close(DAY);
    close(DAY.minusDays(1));

    assertThat(stored.roomDays().lastClosed()).contains(DAY);
  }

  @Test
  void a_day_is_closed_once() {
    close(DAY);

    assertThatThrownBy(() -> close(DAY)).isInstanceOf(RuntimeException.class);

    assertThat(stored.roomDays().lastClosed()).contains(DAY);
  }

  @Test
  void a_day_that_a_failed_transaction_closed_is_open() {
    assertThatThrownBy(
            () ->
                stored.run(
                    () -> {
                      stored.roomDays().close(DAY, BY, NOW);
                      throw new IllegalArgumentException("on purpose");
                    }))
        .hasMessage("on purpose");

    assertThat(stored.roomDays().lastClosed()).isEmpty();
  }

  @Test
  void no_day_is_closed_outside_a_transaction() {
    assertThatThrownBy(() -> stored.roomDays().close(DAY, BY, NOW))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("outside a transaction");
  }
}
