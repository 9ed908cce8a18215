package rungwise.web.call;

import java.time.Duration;
import java.time.Instant;
import rungwise.clinic.ClinicTime;
import rungwise.dosing.known.DurationLimits;
import rungwise.quantities.TimeSpan;

/**
 * How long an erection has lasted, in words, and the clock times that follow from its start.
 *
 * @param milliseconds when it began, since 1970
 * @param start that as a clock time, with its day if it is not today
 * @param elapsed "2 h 20 min"
 * @param twoHours the clock time of 2 hours
 * @param fourHours the clock time of 4 hours
 * @param toFourHours how far that is from now
 * @param minutes whole minutes since the start
 */
public record Counted(
    long milliseconds,
    String start,
    String elapsed,
    String twoHours,
    String fourHours,
    String toFourHours,
    long minutes) {

  static Counted of(Instant start, Instant now, ClinicTime time) {
    long minutes = Duration.between(start, now).toMinutes();
    return new Counted(
        start.toEpochMilli(),
        time.day(start, now),
        TimeSpan.ofMinutes(minutes).toString(),
        clock(DurationLimits.CLOSES_VOLUME.value().after(start), now, time),
        clock(DurationLimits.EMERGENCY.value().after(start), now, time),
        ClinicTime.distance(now, DurationLimits.EMERGENCY.value().after(start)),
        minutes);
  }

  private static String clock(Instant at, Instant now, ClinicTime time) {
    boolean isTomorrow = time.dayOf(at).equals(time.dayOf(now).plusDays(1));
    return isTomorrow ? "tomorrow " + time.timeText(at) : time.day(at, now);
  }
}
