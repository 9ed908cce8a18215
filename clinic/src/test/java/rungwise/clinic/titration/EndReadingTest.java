package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.clock.Present;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.DurationLimits;
import rungwise.quantities.TimeSpan;

/** How long after the injection he was fully soft, as it was told. The zone is New York. */
final class EndReadingTest {

  private static final ClinicTime TIME = new ClinicTime(ZoneId.of("America/New_York"));
  private static final Instant INJECTED = Instant.parse("2026-03-03T02:30:00Z"); // 21:30 there
  private static final Instant NEXT_MORNING = Instant.parse("2026-03-03T14:00:20.123Z");
  private static final TimeSpan HOUR = DurationLimits.NO_HIGHER_DOSE.value();
  private static final TimeSpan TWO_HOURS = DurationLimits.CLOSES_VOLUME.value();
  private static final TimeSpan FOUR_HOURS = DurationLimits.EMERGENCY.value();

  private final PartFaults faults = new PartFaults();

  private Optional<SoftAfter> read(ReportDraft draft, Instant injected, Instant now) {
    return new EndReading(draft, TIME, new Present(now, /* isKnown= */ true), faults)
        .read(Optional.of(injected), Optional.of(Grade.USABLE));
  }

  private static ReportDraft chosen(EndAnswer answer) {
    return ReportDraft.EMPTY.with(ReportPart.SOFT, answer.token());
  }

  private static Instant after(long minutes) {
    return TimeSpan.ofMinutes(minutes).after(INJECTED);
  }

  private static SoftAfter between(long from, long before) {
    return new SoftAfter.Between(TimeSpan.ofMinutes(from), TimeSpan.ofMinutes(before));
  }

  private static SoftAfter exactly(long minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  @Test
  void each_answer_means_to_the_guards_what_it_says() {
    SoftAfter hour = read(chosen(EndAnswer.UP_TO_60), INJECTED, NEXT_MORNING).orElseThrow();
    SoftAfter two = read(chosen(EndAnswer.FROM_61), INJECTED, NEXT_MORNING).orElseThrow();
    SoftAfter four = read(chosen(EndAnswer.FROM_120), INJECTED, NEXT_MORNING).orElseThrow();
    SoftAfter more = read(chosen(EndAnswer.FROM_240), INJECTED, NEXT_MORNING).orElseThrow();
    SoftAfter still = read(chosen(EndAnswer.STILL), INJECTED, NEXT_MORNING).orElseThrow();

    assertThat(hour.mayPass(HOUR)).isFalse();
    assertThat(two.mayPass(HOUR)).isTrue();
    assertThat(two.mayReach(TWO_HOURS)).isFalse();
    assertThat(four.mayReach(TWO_HOURS)).isTrue();
    assertThat(four.mayReach(FOUR_HOURS)).isFalse();
    assertThat(more.saysEmergency()).isTrue();
    assertThat(still.mayReach(FOUR_HOURS)).isTrue();
    assertThat(faults.isEmpty()).isTrue();
  }

  @Test
  void nothing_happened_is_no_duration() {
    Optional<SoftAfter> soft =
        new EndReading(
                chosen(EndAnswer.NO_CHANGE),
                TIME,
                new Present(NEXT_MORNING, /* isKnown= */ true),
                faults)
            .read(Optional.of(INJECTED), Optional.of(Grade.NONE));

    assertThat(soft).contains(new SoftAfter.NotKnown());
    assertThat(faults.isEmpty()).isTrue();
  }

  @ParameterizedTest
  @EnumSource(
      names = {"FULLER", "FIRM_NOT_USABLE", "USABLE", "FULLY_FIRM"},
      value = Grade.class)
  void no_change_at_all_and_any_firmness_are_asked_back(Grade grade) {
    new EndReading(
            chosen(EndAnswer.NO_CHANGE),
            TIME,
            new Present(NEXT_MORNING, /* isKnown= */ true),
            faults)
        .read(Optional.of(INJECTED), Optional.of(grade));

    assertThat(faults.faults()).extracting(PartFault::part).containsExactly(ReportPart.SOFT);
  }

  @ParameterizedTest
  @EnumSource(Grade.class)
  void how_firm_it_was_never_hides_how_long(Grade grade) {
    ReportDraft draft = chosen(EndAnswer.EXACTLY).with(ReportPart.EXACT_MINUTES, "300");

    assertThat(
            new EndReading(draft, TIME, new Present(NEXT_MORNING, /* isKnown= */ true), faults)
                .read(Optional.of(INJECTED), Optional.of(grade)))
        .contains(exactly(300));
    assertThat(faults.isEmpty()).isTrue();
  }

  @Test
  void what_is_over_ended_before_it_was_told() {
    assertThat(read(chosen(EndAnswer.UP_TO_60), INJECTED, after(25))).contains(between(0, 25));
    assertThat(read(chosen(EndAnswer.FROM_61), INJECTED, after(90))).contains(between(61, 90));
    assertThat(read(chosen(EndAnswer.FROM_120), INJECTED, after(120))).contains(exactly(120));
    assertThat(read(chosen(EndAnswer.FROM_240), INJECTED, after(300))).contains(between(240, 300));
    assertThat(faults.isEmpty()).isTrue();
  }

  @Test
  void no_answer_of_an_erection_that_is_over_ends_after_the_call() {
    for (EndAnswer answer :
        List.of(EndAnswer.UP_TO_60, EndAnswer.FROM_61, EndAnswer.FROM_120, EndAnswer.FROM_240)) {
      for (long minutes = 1; minutes < 400; minutes++) {
        Instant now = after(minutes).plusMillis(20_123);
        read(chosen(answer), INJECTED, now)
            .ifPresent(soft -> assertThat(endOf(soft).after(INJECTED)).isBeforeOrEqualTo(now));
      }
    }
  }

  private static TimeSpan endOf(SoftAfter soft) {
    return switch (soft) {
      case SoftAfter.Exactly exactly -> exactly.duration();
      case SoftAfter.Between between -> between.before();
      case SoftAfter.AtLeast atLeast -> throw new AssertionError(soft);
      case SoftAfter.NotKnown notKnown -> throw new AssertionError(soft);
    };
  }

  @Test
  void what_cannot_have_lasted_so_long_yet_is_asked_back_at_its_own_field() {
    read(chosen(EndAnswer.FROM_120), INJECTED, after(119));
    read(chosen(EndAnswer.EXACTLY).with(ReportPart.EXACT_MINUTES, "121"), INJECTED, after(120));

    assertThat(faults.faults())
        .extracting(PartFault::part)
        .containsExactly(ReportPart.SOFT, ReportPart.EXACT_MINUTES);
  }

  /** 21:30 in March; the clocks go on from 02:00 to 03:00 on the 8th and back on 1 November. */
  @ParameterizedTest
  @CsvSource({
    "2026-03-03T02:30:00Z, 22:25, 55",
    "2026-03-03T02:30:00Z, 0040, 190",
    "2026-03-03T02:30:00Z, 12.40 am, 190",
    "2026-03-03T02:30:00Z, 2130, 0",
    "2026-03-08T06:30:00Z, 03:30, 60",
    "2026-11-01T04:30:00Z, 02:30, 180",
    "2026-11-01T06:10:00Z, 01:30, 20"
  })
  void a_clock_time_is_counted_over_midnight_and_over_a_change_of_the_clocks(
      Instant injected, String clock, long minutes) {
    Instant later = injected.plusSeconds(20 * 3600L);
    Optional<SoftAfter> soft =
        read(chosen(EndAnswer.ABOUT).with(ReportPart.SOFT_AT, clock), injected, later);

    assertThat(soft).isEqualTo(minutes == 0 ? Optional.empty() : Optional.of(exactly(minutes)));
    assertThat(faults.isEmpty()).isEqualTo(minutes != 0);
  }

  @Test
  void a_clock_time_that_came_twice_is_asked_back_until_it_is_said_which() {
    Instant injected = Instant.parse("2026-11-01T04:30:00Z"); // 00:30, an hour before 01:30
    Instant later = injected.plusSeconds(20 * 3600L);
    ReportDraft draft = chosen(EndAnswer.ABOUT).with(ReportPart.SOFT_AT, "01:30");

    assertThat(read(draft, injected, later)).isEmpty();
    assertThat(faults.faults())
        .singleElement()
        .extracting(PartFault::part)
        .isEqualTo(ReportPart.SOFT_AT);
    assertThat(read(draft.with(ReportPart.SOFT_OCCURRENCE, "FIRST"), injected, later))
        .contains(exactly(60));
    assertThat(read(draft.with(ReportPart.SOFT_OCCURRENCE, "SECOND"), injected, later))
        .contains(exactly(120));
  }

  @Test
  void a_clock_time_that_is_still_to_come_is_asked_back() {
    read(chosen(EndAnswer.ABOUT).with(ReportPart.SOFT_AT, "21:15"), INJECTED, NEXT_MORNING);

    assertThat(faults.faults())
        .singleElement()
        .extracting(PartFault::part)
        .isEqualTo(ReportPart.SOFT_AT);
  }

  @Test
  void still_firm_counts_up_to_now_or_to_when_he_was_last_seen() {
    assertThat(read(chosen(EndAnswer.STILL), INJECTED, after(90).plusMillis(5_000)))
        .contains(new SoftAfter.AtLeast(TimeSpan.ofMinutes(90)));
    assertThat(
            read(
                chosen(EndAnswer.STILL).with(ReportPart.SEEN_AT, "10:15 pm"),
                INJECTED,
                NEXT_MORNING))
        .contains(new SoftAfter.AtLeast(TimeSpan.ofMinutes(45)));
  }

  /** About ten past ten must never block more than "up to 60 min" does. */
  @Test
  void saying_more_never_blocks_what_saying_less_allows() {
    for (int minute = 1; minute <= 60; minute++) {
      String clock = TIME.timeText(after(minute));
      SoftAfter about =
          read(chosen(EndAnswer.ABOUT).with(ReportPart.SOFT_AT, clock), INJECTED, NEXT_MORNING)
              .orElseThrow();
      assertThat(about.mayPass(HOUR)).isFalse();
    }
  }

  @ParameterizedTest
  @EnumSource(EndAnswer.class)
  void what_is_on_record_is_shown_as_it_was_answered(EndAnswer answer) {
    ReportDraft draft =
        chosen(answer)
            .with(ReportPart.EXACT_MINUTES, answer == EndAnswer.EXACTLY ? "45" : "")
            .with(ReportPart.FROM_MINUTES, answer == EndAnswer.BETWEEN ? "20" : "")
            .with(ReportPart.BEFORE_MINUTES, answer == EndAnswer.BETWEEN ? "45" : "")
            .with(ReportPart.LEAST_MINUTES, answer == EndAnswer.AT_LEAST ? "45" : "")
            .with(ReportPart.SOFT_AT, answer == EndAnswer.ABOUT ? "22:10" : "");
    Grade grade = answer == EndAnswer.NO_CHANGE ? Grade.NONE : Grade.USABLE;
    SoftAfter soft =
        new EndReading(draft, TIME, new Present(NEXT_MORNING, /* isKnown= */ true), faults)
            .read(Optional.of(INJECTED), Optional.of(grade))
            .orElseThrow();

    EndAnswer shown =
        switch (answer) {
          case ABOUT -> EndAnswer.EXACTLY;
          case STILL -> EndAnswer.AT_LEAST;
          case FROM_240 -> EndAnswer.BETWEEN;
          default -> answer;
        };
    assertThat(EndAnswer.of(soft, grade)).isEqualTo(shown);
  }
}
