package rungwise.web.call;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

class CallFormTest {

  private static final ClinicTime CHICAGO = new ClinicTime(ZoneId.of("America/Chicago"));

  private static Reading<Optional<Instant>> start(String day, String at, String now) {
    return new CallForm(Map.of(CallForm.DAY, day, CallForm.AT, at))
        .start(CHICAGO, Instant.parse(now));
  }

  private static Instant read(String day, String at, String now) {
    return start(day, at, now).orThrow().orElseThrow();
  }

  @Test
  void a_time_of_today_that_has_not_come_was_yesterdays() {
    String now = "2026-12-01T06:20:00Z"; // 00:20 in Chicago

    assertThat(read(CallForm.TODAY, "23:50", now)).isEqualTo("2026-12-01T05:50:00Z");
    assertThat(read(CallForm.TODAY, "00:20", now)).isEqualTo("2026-12-01T06:20:00Z");
    assertThat(read(CallForm.YESTERDAY, "00:20", now)).isEqualTo("2026-11-30T06:20:00Z");
  }

  /** Clocks went back from 02:00 CDT to 01:00 CST on 1 November 2026 (tz database). */
  @Test
  void of_a_time_that_came_twice_the_earlier_counts() {
    assertThat(read(CallForm.TODAY, "01:30", "2026-11-01T08:00:00Z"))
        .isEqualTo("2026-11-01T06:30:00Z");
  }

  /** Clocks went forward from 02:00 CST to 03:00 CDT on 8 March 2026 (tz database). */
  @Test
  void a_time_that_never_was_is_asked_back_at_its_field() {
    assertThat(start(CallForm.TODAY, "02:30", "2026-03-08T12:00:00Z").placed())
        .extracting(Fault::field)
        .containsExactly(CallForm.AT);
    assertThat(start(CallForm.TODAY, "7:50", "2026-03-08T12:00:00Z").placed())
        .extracting(Fault::field)
        .containsExactly(CallForm.AT);
  }

  @Test
  void the_script_is_told_of_each_change_of_the_clocks_around_now() {
    Instant now = Instant.parse("2026-11-01T12:00:00Z");

    assertThat(Ticking.of(now, CHICAGO, "call.js", /* isWrong= */ false).offsets())
        .isEqualTo("0:-300," + Instant.parse("2026-11-01T07:00:00Z").toEpochMilli() + ":-360");
    assertThat(
            Ticking.of(Instant.parse("2026-11-30T12:00:00Z"), CHICAGO, "x", /* isWrong= */ false)
                .offsets())
        .isEqualTo("0:-360");
  }
}
