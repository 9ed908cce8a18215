package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class TimeSpanTest {

  private static final long SEED = 20_260_105;
  private static final int CASES = 20_000;
  private static final TimeSpan ZERO = TimeSpan.ofMinutes(0);

  @ParameterizedTest
  @CsvSource({
    "0.001, 60",
    "0.1, 6000",
    "33.333, 1999980",
    "45, 2700000",
    "45 min, 2700000",
    "45 minutes, 2700000",
    "1 minute, 60000",
    "240, 14400000",
    "999999, 59999940000",
  })
  void minutes_are_exact_to_the_millisecond(String given, long milliseconds) {
    assertThat(TimeSpan.parseMinutes(given)).isEqualTo(Reading.of(new TimeSpan(milliseconds)));
  }

  @ParameterizedTest
  @CsvSource({
    "2 h, 'write it in minutes, so 2 hours is 120'",
    "2 hours, 'write it in minutes, so 2 hours is 120'",
    "2 hrs, 'write it in minutes, so 2 hours is 120'",
    "90 s, 'write it in minutes, so 90 seconds is 1.5'",
    "0, it must be more than 0",
    "0.0001, it has more decimal places than can be kept",
    "1000000, 'it is too large, the most that is read is 999,999 min'",
  })
  void a_refused_time_says_what_to_write(String given, String why) {
    assertThat(TimeSpan.parseMinutes(given).faults())
        .containsExactly(
            "\""
                + given
                + "\" is not a time in minutes: "
                + why
                + "; enter digits with at most 3 decimal places, such as 45 min");
  }

  @Test
  void the_start_of_an_interval_may_be_zero() {
    assertThat(TimeSpan.parseMinutesFromZero("0")).isEqualTo(Reading.of(ZERO));
    assertThat(TimeSpan.parseMinutesFromZero("0 min")).isEqualTo(Reading.of(ZERO));
    assertThat(TimeSpan.parseMinutesFromZero("30")).isEqualTo(Reading.of(TimeSpan.ofMinutes(30)));
    assertThat(TimeSpan.parseMinutesFromZero("0.0").notices()).hasSize(1);
    assertThat(TimeSpan.parseMinutesFromZero("-1").found()).isEmpty();
    assertThat(TimeSpan.parseMinutesFromZero("").found()).isEmpty();
  }

  /** Rounding up can only make an erection longer, and a longer one forbids more. */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "0.000000000001, 1",
    "33.333333333, 2000000",
    "33.333333333333, 2000000",
    "60, 3600000",
    "60.000000000001, 3600001",
    "59.999999999999, 3600000",
    "0.1, 6000",
    "999999, 59999940000",
    "999998.999999999999, 59999940000",
  })
  void minutes_of_a_file_are_rounded_up_to_a_whole_millisecond(String given, long milliseconds) {
    assertThat(TimeSpan.parseDecimalMinutes(given))
        .isEqualTo(Reading.of(new TimeSpan(milliseconds)));
  }

  @Test
  void minutes_of_a_file_have_at_most_twelve_decimal_places() {
    assertThat(TimeSpan.parseDecimalMinutes("33.3333333333333").faults())
        .containsExactly(
            "\"33.3333333333333\" is not a time in minutes: it has more decimal places than can be"
                + " kept; enter digits with at most 12 decimal places, such as 45 min");
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 min",
    "45, 45 min",
    "59, 59 min",
    "60, 1 h",
    "75, 1 h 15 min",
    "240, 4 h",
    "1800, 30 h",
    "60000, '1,000 h'",
  })
  void a_time_prints_in_hours_and_minutes(long minutes, String text) {
    assertThat(TimeSpan.ofMinutes(minutes)).hasToString(text);
  }

  @Test
  void the_text_of_a_form_field_reads_back_even_from_a_thousand_minutes_on() {
    TimeSpan day = TimeSpan.ofHours(24);

    assertThat(day.minutesText()).isEqualTo("1440");
    assertThat(TimeSpan.parseMinutes(day.minutesText())).isEqualTo(Reading.of(day));
  }

  @Test
  void every_typed_time_reads_back_as_it_was_printed() {
    var random = new Random(SEED);

    for (int i = 0; i < CASES; i++) {
      var span = new TimeSpan(60 * (1 + random.nextLong(999_999_999)));

      assertThat(TimeSpan.parseMinutes(span.minutesText())).isEqualTo(Reading.of(span));
      assertThat(TimeSpan.parseDecimalMinutes(span.minutesText())).isEqualTo(Reading.of(span));
    }
  }

  @Test
  void a_part_of_a_thousandth_of_a_minute_is_not_printed_as_more_time() {
    assertThat(new TimeSpan(14_399_999).minutesText()).isEqualTo("239.999");
    assertThat(new TimeSpan(14_399_999)).hasToString("3 h 59.999 min");
  }

  @Test
  void a_span_between_two_instants_is_what_lies_between_them() {
    Instant from = Instant.parse("2026-03-29T00:30:00Z");
    Instant to = Instant.parse("2026-03-30T00:30:00.250Z");

    TimeSpan span = TimeSpan.between(from, to);

    assertThat(span).isEqualTo(new TimeSpan(86_400_250));
    assertThat(span.after(from)).isEqualTo(to);
    assertThatThrownBy(() -> TimeSpan.between(to, from)).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> TimeSpan.between(from.plusNanos(1), from))
        .hasMessageStartingWith("bug:");
  }

  @Test
  void spans_compare_on_both_sides_of_a_limit() {
    TimeSpan limit = TimeSpan.ofMinutes(120);
    var justOver = new TimeSpan(limit.milliseconds() + 1);

    assertThat(limit.isMoreThan(limit)).isFalse();
    assertThat(limit.isLessThan(limit)).isFalse();
    assertThat(justOver.isMoreThan(limit)).isTrue();
    assertThat(limit.isLessThan(justOver)).isTrue();
    assertThat(limit).isEqualByComparingTo(TimeSpan.ofHours(2)).isLessThan(justOver);
    assertThat(limit.ratioTo(TimeSpan.ofMinutes(60))).isEqualTo(2.0);
  }

  @Test
  void a_span_that_is_too_long_is_refused_and_does_not_wrap() {
    assertThatThrownBy(() -> TimeSpan.ofMinutes(Long.MAX_VALUE))
        .isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> TimeSpan.ofHours(Long.MAX_VALUE))
        .isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> TimeSpan.ofMinutes(-1)).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> ZERO.ratioTo(ZERO)).hasMessageStartingWith("bug:");
  }
}
