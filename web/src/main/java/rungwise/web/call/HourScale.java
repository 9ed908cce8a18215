package rungwise.web.call;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.IntStream;
import rungwise.dosing.known.DurationLimits;
import rungwise.quantities.TimeSpan;

/** The hours of an erection drawn as a barrel: where each stands, in per cent of the width. */
public final class HourScale {

  /** Where 0 stands, and how wide an hour is. */
  public static final int FIRST = 2;

  public static final int HOUR = 16;

  /** The last minute that is drawn, and the one from which on it is an emergency. */
  public static final long END = 360;

  public static final long LIMIT = minutes(DurationLimits.EMERGENCY.value());

  private static final int MINUTES = 60;
  private static final int STEP = 15;
  private static final int PLACES = 2;

  /** Every quarter of an hour. */
  public static final List<Tick> TICKS =
      IntStream.iterate(0, at -> at <= END, at -> at + STEP).mapToObj(Tick::new).toList();

  /**
   * One line of the scale.
   *
   * @param minute how many minutes it stands for
   */
  public record Tick(long minute) {

    public String x() {
      return percent(minute);
    }

    public boolean isHour() {
      return minute % MINUTES == 0;
    }

    public boolean isLimit() {
      return minute == LIMIT;
    }

    public String word() {
      return minute == 0 ? "0" : minute / MINUTES + " h";
    }

    public String anchor() {
      if (minute == 0) {
        return "start";
      }
      return minute == END ? "end" : "middle";
    }
  }

  private HourScale() {}

  private static long minutes(TimeSpan span) {
    return Long.parseLong(span.minutesText());
  }

  /** Where a minute stands; what is beyond the end stands at the end. */
  public static double at(long minutes) {
    return FIRST + Math.min(minutes, END) * (double) HOUR / MINUTES;
  }

  public static String percent(long minutes) {
    return text(at(minutes));
  }

  /** From 0 to where a minute stands. */
  public static String width(double at) {
    return text(at - FIRST);
  }

  /** A place as an attribute. */
  public static String text(double at) {
    return BigDecimal.valueOf(at).setScale(PLACES, RoundingMode.HALF_UP).toPlainString() + "%";
  }
}
