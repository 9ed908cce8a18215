package rungwise.clinic.reach;

import java.time.LocalDateTime;
import java.time.LocalTime;
import rungwise.clinic.ClinicTime;

/**
 * The hours of a day at which somebody may be called; they may pass midnight.
 *
 * @param from the first minute
 * @param until the first minute that is too late; midnight for the end of the day
 */
public record Hours(LocalTime from, LocalTime until) {

  /** The hours of a day at which nobody is woken. */
  public static final Hours DAYTIME = new Hours(LocalTime.of(8, 0), LocalTime.of(20, 0));

  public Hours {
    if (from.equals(until)) {
      throw new IllegalArgumentException("bug: hours that begin when they end");
    }
  }

  /** Whether a time of day is within them. */
  public boolean contains(LocalTime clock) {
    boolean isBegun = !clock.isBefore(from);
    boolean isNotOver = clock.isBefore(until);
    return from.isBefore(until) ? isBegun && isNotOver : isBegun || isNotOver;
  }

  /** The first time at or after another one that is within them. */
  public LocalDateTime next(LocalDateTime earliest) {
    if (contains(earliest.toLocalTime())) {
      return earliest;
    }
    LocalDateTime today = earliest.toLocalDate().atTime(from);
    return today.isBefore(earliest) ? today.plusDays(1) : today;
  }

  /** "only after 18:00", "only before 12:00", "only from 09:00 to 12:30". */
  public String words() {
    if (until.equals(LocalTime.MIDNIGHT)) {
      return "only after " + ClinicTime.clockText(from);
    }
    return from.equals(LocalTime.MIDNIGHT)
        ? "only before " + ClinicTime.clockText(until)
        : "only from " + ClinicTime.clockText(from) + " to " + ClinicTime.clockText(until);
  }
}
