package rungwise.quantities;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;

/**
 * How long something lasted, as a whole number of milliseconds.
 *
 * @param milliseconds 0 or more
 */
public record TimeSpan(long milliseconds) implements Comparable<TimeSpan> {

  private static final String UNIT = "min";
  private static final long MILLISECONDS_IN_A_MINUTE = 60_000;
  private static final long MINUTES_IN_AN_HOUR = 60;

  /** Thousandths of a minute are read, as a file may give decimal minutes. */
  private static final AmountFormat FORMAT =
      new AmountFormat(
          "a time in minutes",
          "45",
          Map.of(UNIT, 3),
          Map.of(
              "h", "write it in minutes, so 2 hours is 120",
              "hours", "write it in minutes, so 2 hours is 120",
              "hour", "write it in minutes, so 1 hour is 60"));

  public TimeSpan {
    if (milliseconds < 0) {
      throw new IllegalArgumentException("bug: a time span of " + milliseconds + " milliseconds");
    }
  }

  public static TimeSpan ofMinutes(long minutes) {
    return new TimeSpan(Math.multiplyExact(minutes, MILLISECONDS_IN_A_MINUTE));
  }

  public static TimeSpan ofHours(long hours) {
    return ofMinutes(Math.multiplyExact(hours, MINUTES_IN_AN_HOUR));
  }

  /** The span from one instant to a later one. */
  public static TimeSpan between(Instant from, Instant to) {
    return new TimeSpan(Duration.between(from, to).toMillis());
  }

  /** Reads a number of minutes of at most 3 decimal places, more than 0. */
  public static Reading<TimeSpan> parseMinutes(String text) {
    return FORMAT
        .readIn(UNIT, text)
        .map(thousandths -> new TimeSpan(thousandths * MILLISECONDS_IN_A_MINUTE / 1000));
  }

  /** The instant that lies this long after another. */
  public Instant after(Instant start) {
    return start.plusMillis(milliseconds);
  }

  public boolean isMoreThan(TimeSpan other) {
    return milliseconds > other.milliseconds;
  }

  public boolean isLessThan(TimeSpan other) {
    return milliseconds < other.milliseconds;
  }

  /** This span as a multiple of another, dimensionless. */
  public double ratioTo(TimeSpan other) {
    return (double) milliseconds / other.milliseconds;
  }

  /** The number of minutes, without its unit, for a form field: "75". */
  public String minutesText() {
    return AmountFormat.plain(milliseconds * 1000 / MILLISECONDS_IN_A_MINUTE, 3);
  }

  @Override
  public int compareTo(TimeSpan other) {
    return Long.compare(milliseconds, other.milliseconds);
  }

  /** "45 min", "4 h" or "1 h 15 min". */
  @Override
  public String toString() {
    long wholeHours = milliseconds / (MILLISECONDS_IN_A_MINUTE * MINUTES_IN_AN_HOUR);
    TimeSpan rest = new TimeSpan(milliseconds - ofHours(wholeHours).milliseconds);
    if (wholeHours == 0) {
      return rest.minutesText() + " " + UNIT;
    }
    return wholeHours + " h" + (rest.milliseconds == 0 ? "" : " " + rest);
  }
}
