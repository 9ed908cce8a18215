package rungwise.clinic.call;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.ClockText;
import rungwise.clinic.clock.Present;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * A time of today or yesterday, as somebody on the line says it.
 *
 * @param day {@link #YESTERDAY}, or today
 * @param clock hours and minutes, as typed
 */
public record SaidTime(String day, String clock) {

  public static final String TODAY = "today";
  public static final String YESTERDAY = "yesterday";

  /**
   * When it began: the earlier one where the clocks showed that time twice. A time of today that
   * has not come yet was yesterday's.
   */
  public Reading<Instant> began(ClinicTime time, Instant now) {
    return read(time, now, Occurrence.FIRST, /* isStart= */ true);
  }

  /** When something happened since: the later of two equal times, and never one still to come. */
  public Reading<Instant> happened(ClinicTime time, Present told) {
    Reading<Instant> read = read(time, told.now(), Occurrence.SECOND, /* isStart= */ false);
    return read.found().filter(told::isStillToCome).isPresent()
        ? Reading.refused(
            new Fault(
                ClinicTime.TIME_FIELD,
                "\"" + clock + "\" is still to come: write when it was, or choose yesterday."))
        : read;
  }

  private Reading<Instant> read(ClinicTime time, Instant now, Occurrence which, boolean isStart) {
    return switch (ClockText.read(clock)) {
      case Reading.Read<LocalTime> read -> read(read.value(), time, now, which, isStart);
      case Reading.Refused<LocalTime> refused ->
          new Reading.Refused<>(refused.at(ClinicTime.TIME_FIELD).placed());
    };
  }

  private Reading<Instant> read(
      LocalTime at, ClinicTime time, Instant now, Occurrence which, boolean isStart) {
    LocalDate today = time.dayOf(now);
    LocalDate yesterday = today.minusDays(1);
    if (day.equals(YESTERDAY)) {
      return time.read(yesterday, at, which);
    }
    Reading<Instant> read = time.read(today, at, which);
    return isStart && read.found().filter(start -> start.isAfter(now)).isPresent()
        ? time.read(yesterday, at, which)
        : read;
  }
}
