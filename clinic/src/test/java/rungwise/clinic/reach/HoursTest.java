package rungwise.clinic.reach;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.time.LocalTime;
import org.junit.jupiter.api.Test;

/** Both sides of each end of the hours at which a man may be called. */
final class HoursTest {

  private static Hours hours(String from, String until) {
    return new Hours(LocalTime.parse(from), LocalTime.parse(until));
  }

  private static boolean isIn(Hours hours, String clock) {
    return hours.contains(LocalTime.parse(clock));
  }

  @Test
  void the_first_minute_belongs_to_them_and_the_last_does_not() {
    Hours day = hours("09:00", "17:30");

    assertThat(isIn(day, "08:59")).isFalse();
    assertThat(isIn(day, "09:00")).isTrue();
    assertThat(isIn(day, "17:29")).isTrue();
    assertThat(isIn(day, "17:30")).isFalse();
  }

  @Test
  void they_may_pass_midnight() {
    Hours night = hours("22:00", "02:00");

    assertThat(isIn(night, "21:59")).isFalse();
    assertThat(isIn(night, "23:59")).isTrue();
    assertThat(isIn(night, "01:59")).isTrue();
    assertThat(isIn(night, "02:00")).isFalse();
  }

  @Test
  void the_next_time_is_of_today_or_of_tomorrow() {
    Hours evening = hours("18:00", "00:00");

    assertThat(evening.next(LocalDateTime.parse("2026-03-02T14:00")))
        .isEqualTo(LocalDateTime.parse("2026-03-02T18:00"));
    assertThat(evening.next(LocalDateTime.parse("2026-03-02T23:59")))
        .isEqualTo(LocalDateTime.parse("2026-03-02T23:59"));
    assertThat(hours("09:00", "12:00").next(LocalDateTime.parse("2026-03-02T12:00")))
        .isEqualTo(LocalDateTime.parse("2026-03-03T09:00"));
  }

  @Test
  void one_open_end_is_said_as_one() {
    assertThat(hours("18:00", "00:00").words()).isEqualTo("only after 18:00");
    assertThat(hours("00:00", "12:00").words()).isEqualTo("only before 12:00");
    assertThat(hours("09:00", "12:30").words()).isEqualTo("only from 09:00 to 12:30");
  }
}
