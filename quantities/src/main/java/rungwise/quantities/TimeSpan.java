package rungwise.quantities;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.stream.LongStream;
import java.util.stream.Stream;

/**
 * How long something lasted, as a whole number of milliseconds.
 *
 * @param milliseconds 0 or more
 */
public record TimeSpan(long milliseconds) implements Comparable<TimeSpan> {

  private static final String UNIT = "min";
  private static final long MILLISECONDS_IN_A_MINUTE = 60_000;
  private static final long MINUTES_IN_AN_HOUR = 60;
  private static final long TEN = 10;

  private static final long MOST_MINUTES = 999_999;

  /** Thousandths of a minute, each of which is a whole number of milliseconds. */
  private static final int TYPED_PLACES = 3;

  private static final long MILLISECONDS_IN_A_THOUSANDTH = 60;
  private static final AmountFormat TYPED = format(TYPED_PLACES, 1);
  private static final AmountFormat TYPED_FROM_ZERO = format(TYPED_PLACES, 0);

  /** As many decimals as a program writes. */
  private static final int FILE_PLACES = 12;

  /** 60,000 milliseconds are 10^12 of the smallest part of a minute that a file may give. */
  private static final long MILLISECONDS_FACTOR = 6;

  private static final long MILLISECONDS_DIVISOR = 100_000_000;
  private static final AmountFormat FILE = format(FILE_PLACES, 0);

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

  /**
   * The span from one instant to a later one, without its last part of a millisecond.
   *
   * @throws IllegalArgumentException if the second is the earlier
   */
  public static TimeSpan between(Instant from, Instant to) {
    Duration duration = Duration.between(from, to);
    if (duration.isNegative()) {
      throw new IllegalArgumentException("bug: a time span from " + from + " back to " + to);
    }
    return new TimeSpan(duration.toMillis());
  }

  private static AmountFormat format(int places, long least) {
    var units = new LinkedHashMap<String, Integer>();
    Stream.of(UNIT, "minute", "minutes").forEach(word -> units.put(word, places));
    var refusals = new LinkedHashMap<String, String>();
    Stream.of("h", "hr", "hrs", "hour", "hours")
        .forEach(word -> refusals.put(word, "write it in minutes, so 2 hours is 120"));
    Stream.of("s", "sec", "second", "seconds")
        .forEach(word -> refusals.put(word, "write it in minutes, so 90 seconds is 1.5"));
    long most = MOST_MINUTES * LongStream.range(0, places).reduce(1, (power, i) -> power * TEN);
    return new AmountFormat(
        "a time in minutes", "45", units, refusals, new AmountFormat.Range(least, most));
  }

  /** Reads a number of minutes of at most 3 decimal places, more than 0. */
  public static Reading<TimeSpan> parseMinutes(String text) {
    return TYPED.readIn(UNIT, text).map(TimeSpan::ofThousandths);
  }

  /** Reads a number of minutes of at most 3 decimal places, 0 included: an interval's start. */
  public static Reading<TimeSpan> parseMinutesFromZero(String text) {
    return TYPED_FROM_ZERO.readIn(UNIT, text).map(TimeSpan::ofThousandths);
  }

  /**
   * Reads the minutes that a program wrote into a file: at most 12 decimal places, 0 included. A
   * part of a millisecond is rounded up, because a longer erection can only forbid more.
   */
  public static Reading<TimeSpan> parseDecimalMinutes(String text) {
    return FILE.readIn(UNIT, text)
        .map(parts -> Math.ceilDiv(parts * MILLISECONDS_FACTOR, MILLISECONDS_DIVISOR))
        .map(TimeSpan::new);
  }

  private static TimeSpan ofThousandths(long thousandths) {
    return new TimeSpan(thousandths * MILLISECONDS_IN_A_THOUSANDTH);
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

  /**
   * This span as a multiple of another, dimensionless.
   *
   * @throws IllegalArgumentException if the other is zero
   */
  public double ratioTo(TimeSpan other) {
    if (!(other.milliseconds > 0)) {
      throw new IllegalArgumentException("bug: a division by " + other);
    }
    return (double) milliseconds / other.milliseconds;
  }

  /** The number of minutes, without its unit, for a form field: "75". Never more than there is. */
  public String minutesText() {
    return AmountFormat.plain(milliseconds / MILLISECONDS_IN_A_THOUSANDTH, TYPED_PLACES);
  }

  /** The number of whole hours, without its unit, for a form field: "24". */
  public String wholeHoursText() {
    return Long.toString(milliseconds / ofHours(1).milliseconds);
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
    return AmountFormat.grouped(Long.toString(wholeHours))
        + " h"
        + (rest.milliseconds == 0 ? "" : " " + rest);
  }
}
