package rungwise.dosing.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.dosing.known.Form;
import rungwise.dosing.supply.VialEnd.InUse;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What ends a vial, and when. */
final class VialDatesTest {

  private static final LocalDate OPENED = LocalDate.of(2026, 1, 20);
  private static final LocalDate LABEL = LocalDate.of(2026, 6, 30);
  private static final Form SOLUTION = new Form.Solution();
  private static final InUseRule NOT_STATED = new InUseRule.NotStated();

  /** US label, vial: 24 hours of use once dissolved. */
  private static final Form POWDER =
      new Form.Powder(Volume.ofMicrolitres(1000), TimeSpan.ofHours(24));

  private static VialDates vial(Optional<Opening> opened, Optional<Integer> daysInUse) {
    return new VialDates(Optional.empty(), LABEL, opened, daysInUse);
  }

  private static VialDates open(Optional<Integer> daysInUse) {
    return vial(Optional.of(Opening.on(OPENED)), daysInUse);
  }

  private static VialDates openAt(String clock) {
    return vial(Optional.of(new Opening(OPENED, Optional.of(LocalTime.parse(clock)))), none());
  }

  private static Optional<Integer> none() {
    return Optional.empty();
  }

  private static InUseRule days(int days) {
    return new InUseRule.DaysAfterOpening(days);
  }

  private static VialEnd end(VialDates dates, InUseRule rule, Form form) {
    return dates.end(rule, form, ZoneOffset.UTC);
  }

  private static Instant midnightAfter(LocalDate lastDay) {
    return lastDay.plusDays(1).atStartOfDay().toInstant(ZoneOffset.UTC);
  }

  /** First puncture and 28 days: USP chapter 797. */
  @ParameterizedTest
  @CsvSource({
    "2026-04-10, 2026-01-20, 28, 2026-02-17",
    "2026-02-10, 2026-01-20, 28, 2026-02-10",
    "2026-04-10, , 28, 2026-04-10"
  })
  void it_ends_with_the_earlier_of_its_two_days(
      LocalDate beyondUse, LocalDate opened, int days, LocalDate last) {
    var dates =
        new VialDates(
            Optional.empty(),
            beyondUse,
            Optional.ofNullable(opened).map(Opening::on),
            Optional.of(days));

    assertThat(end(dates, NOT_STATED, SOLUTION).at()).isEqualTo(midnightAfter(last));
    assertThat(end(dates, days(365), SOLUTION).at()).isEqualTo(midnightAfter(last));
  }

  @Test
  void the_preparations_days_count_where_none_are_typed_and_where_they_are_fewer() {
    VialEnd untyped = end(open(none()), days(28), SOLUTION);
    VialEnd fewer = end(open(Optional.of(70)), days(28), SOLUTION);
    VialEnd more = end(open(Optional.of(14)), days(28), SOLUTION);

    assertThat(untyped.by()).isEqualTo(new VialLimit.DaysOpen(28));
    assertThat(fewer).isEqualTo(untyped);
    assertThat(untyped.at()).isEqualTo(midnightAfter(OPENED.plusDays(28)));
    assertThat(more.by()).isEqualTo(new VialLimit.DaysOpen(14));
  }

  @Test
  void a_dissolved_powder_counts_by_the_hour_whatever_its_days_are() {
    Instant dissolved = Instant.parse("2026-01-20T09:30:00Z");
    for (InUseRule rule : List.of(days(3), NOT_STATED, new InUseRule.SingleUse())) {
      VialEnd end = end(openAt("09:30"), rule, POWDER);

      assertThat(end.at()).isEqualTo(dissolved.plus(Duration.ofHours(24)));
      assertThat(end.by()).isEqualTo(new VialLimit.Dissolved(TimeSpan.ofHours(24)));
      assertThat(end.inUse()).isEqualTo(InUse.KNOWN);
      assertThat(end.isInDate(end.at().minusMillis(1))).isTrue();
      assertThat(end.isInDate(end.at())).isFalse();
    }
  }

  @Test
  void an_opening_without_its_hour_counts_from_the_beginning_of_the_day() {
    assertThat(end(open(none()), NOT_STATED, POWDER).at())
        .isEqualTo(Instant.parse("2026-01-21T00:00:00Z"));
  }

  @Test
  void hours_pass_on_the_clock_of_the_world_when_the_clocks_change() {
    ZoneId berlin = ZoneId.of("Europe/Berlin");
    var before =
        vial(
            Optional.of(new Opening(LocalDate.of(2026, 3, 28), Optional.of(LocalTime.of(12, 0)))),
            none());

    // 29 March 2026 had 23 hours there: 24 hours after noon of the 28th are 13:00.
    assertThat(before.end(NOT_STATED, POWDER, berlin).at())
        .isEqualTo(Instant.parse("2026-03-29T11:00:00Z"));
  }

  @Test
  void a_container_for_one_injection_is_not_kept_open() {
    VialEnd end = end(openAt("09:30"), new InUseRule.SingleUse(), SOLUTION);

    assertThat(end.at()).isEqualTo(Instant.parse("2026-01-20T10:30:00Z"));
    assertThat(end.by()).isInstanceOf(VialLimit.SingleUse.class);
  }

  @Test
  void open_and_nobody_said_for_how_long_is_told_apart() {
    VialEnd notStated = end(open(none()), NOT_STATED, SOLUTION);

    assertThat(notStated.inUse()).isEqualTo(InUse.OPEN_AND_NOT_STATED);
    assertThat(notStated.at()).isEqualTo(midnightAfter(LABEL));
    assertThat(end(open(Optional.of(28)), NOT_STATED, SOLUTION).inUse()).isEqualTo(InUse.KNOWN);
    assertThat(end(vial(Optional.empty(), none()), NOT_STATED, SOLUTION))
        .isEqualTo(VialEnd.byLabel(midnightAfter(LABEL)));
  }

  @Test
  void the_label_ends_a_vial_that_its_days_would_outlive_and_says_so() {
    VialEnd end = end(open(none()), days(365), SOLUTION);

    assertThat(end).isEqualTo(VialEnd.byLabel(midnightAfter(LABEL)));
  }

  @Test
  void a_dose_that_was_drawn_opens_it_unless_it_was_open_before() {
    Opening drawn = Opening.byUseAt(Instant.parse("2026-01-25T08:00:00Z"), ZoneOffset.UTC);
    Opening before = Opening.byUseAt(Instant.parse("2026-01-19T08:00:00Z"), ZoneOffset.UTC);

    assertThat(vial(Optional.empty(), none()).openBy(drawn, ZoneOffset.UTC).opened())
        .contains(drawn);
    assertThat(open(none()).openBy(drawn, ZoneOffset.UTC).opened()).contains(Opening.on(OPENED));
    assertThat(open(none()).openBy(before, ZoneOffset.UTC).opened()).contains(before);
  }
}
