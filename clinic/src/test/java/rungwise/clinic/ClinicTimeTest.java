package rungwise.clinic;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.quantities.Reading;

/** Local times around the clock changes of 2026, by the published rules of the two zones. */
final class ClinicTimeTest {

  private static Reading<Instant> read(String zone, String date, String time, Occurrence which) {
    return new ClinicTime(ZoneId.of(zone)).read(date, time, which);
  }

  @ParameterizedTest
  @CsvSource({
    "Europe/Berlin, 2026-03-29, 01:59, 2026-03-29T00:59:00Z",
    "Europe/Berlin, 2026-03-29, 03:00, 2026-03-29T01:00:00Z",
    "Europe/Berlin, 2026-10-25, 01:59, 2026-10-24T23:59:00Z",
    "Europe/Berlin, 2026-10-25, 03:00, 2026-10-25T02:00:00Z",
    "America/New_York, 2026-03-08, 01:59, 2026-03-08T06:59:00Z",
    "America/New_York, 2026-03-08, 03:00, 2026-03-08T07:00:00Z",
    "America/New_York, 2026-11-01, 00:59, 2026-11-01T04:59:00Z",
    "America/New_York, 2026-11-01, 02:00, 2026-11-01T07:00:00Z",
  })
  void a_time_that_came_once_is_read_whatever_is_said(
      String zone, String date, String time, Instant expected) {
    for (Occurrence which : Occurrence.values()) {
      assertThat(read(zone, date, time, which).found()).as("%s", which).contains(expected);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "Europe/Berlin, 2026-03-29, 02:00",
    "Europe/Berlin, 2026-03-29, 02:59",
    "America/New_York, 2026-03-08, 02:00",
    "America/New_York, 2026-03-08, 02:59",
  })
  void a_time_that_never_came_is_refused_whatever_is_said(String zone, String date, String time) {
    for (Occurrence which : Occurrence.values()) {
      assertThat(read(zone, date, time, which).faults())
          .singleElement()
          .asString()
          .startsWith("There was no " + time);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "Europe/Berlin, 2026-10-25, 02:00, 2026-10-25T00:00:00Z, 2026-10-25T01:00:00Z",
    "Europe/Berlin, 2026-10-25, 02:59, 2026-10-25T00:59:00Z, 2026-10-25T01:59:00Z",
    "America/New_York, 2026-11-01, 01:00, 2026-11-01T05:00:00Z, 2026-11-01T06:00:00Z",
    "America/New_York, 2026-11-01, 01:59, 2026-11-01T05:59:00Z, 2026-11-01T06:59:00Z",
  })
  void a_time_that_came_twice_is_asked_back(
      String zone, String date, String time, Instant first, Instant second) {
    assertThat(read(zone, date, time, Occurrence.NOT_SAID).faults())
        .singleElement()
        .asString()
        .startsWith(time + " came twice");
    assertThat(read(zone, date, time, Occurrence.FIRST).found()).contains(first);
    assertThat(read(zone, date, time, Occurrence.SECOND).found()).contains(second);
  }

  @ParameterizedTest
  @ValueSource(strings = {"24:00", "24:01", "23:60", "09:30:00", "", "noon"})
  void what_is_no_time_of_day_is_refused(String time) {
    assertThat(read("Europe/Berlin", "2026-03-02", time, Occurrence.NOT_SAID).faults())
        .singleElement()
        .asString()
        .startsWith("\"" + time + "\" is not a time of day");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"2026-02-29", "2026-13-01", "02.03.2026", "2026-3-2", "+999999999-12-31", ""})
  void what_is_no_date_is_refused(String date) {
    assertThat(read("Europe/Berlin", date, "09:30", Occurrence.NOT_SAID).faults())
        .singleElement()
        .asString()
        .startsWith("\"" + date + "\" is not a date");
  }

  @Test
  void spaces_around_a_date_and_a_time_do_no_harm() {
    assertThat(read("Europe/Berlin", " 2026-03-02 ", " 09:30 ", Occurrence.NOT_SAID).found())
        .contains(Instant.parse("2026-03-02T08:30:00Z"));
  }

  @Test
  void only_a_time_in_the_hour_that_came_twice_is_asked_back() {
    var berlin = new ClinicTime(ZoneId.of("Europe/Berlin"));

    assertThat(berlin.comesTwice("2026-10-25", "02:30")).isTrue();
    assertThat(berlin.comesTwice("2026-10-25", "01:59")).isFalse();
    assertThat(berlin.comesTwice("2026-10-25", "03:00")).isFalse();
    assertThat(berlin.comesTwice("2026-03-29", "02:30")).isFalse();
    assertThat(berlin.comesTwice("2026-10-25", "half past two")).isFalse();
    assertThat(berlin.comesTwice("", "02:30")).isFalse();
  }

  @Test
  void an_instant_knows_which_of_two_equal_times_it_is() {
    var berlin = new ClinicTime(ZoneId.of("Europe/Berlin"));

    assertThat(berlin.occurrence(Instant.parse("2026-10-25T00:30:00Z")))
        .isEqualTo(Occurrence.FIRST);
    assertThat(berlin.occurrence(Instant.parse("2026-10-25T01:30:00Z")))
        .isEqualTo(Occurrence.SECOND);
    assertThat(berlin.occurrence(Instant.parse("2026-10-25T02:30:00Z")))
        .isEqualTo(Occurrence.NOT_SAID);
  }
}
