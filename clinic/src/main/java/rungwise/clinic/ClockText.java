package rungwise.clinic;

import java.time.LocalTime;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rungwise.quantities.Reading;

/** A time of day as people write it: 21:30, 21.30, 2130, 9:30 pm. One that may be two is none. */
public final class ClockText {

  private static final Pattern OF_24 = Pattern.compile("([01][0-9]|2[0-3])[:.]?([0-5][0-9])");
  private static final Pattern OF_12 =
      Pattern.compile("(0?[1-9]|1[0-2])(?:[:.]?([0-5][0-9]))? ?([ap])\\.?m\\.?");
  private static final Pattern ONE_DIGIT = Pattern.compile("([1-9])[:.]?([0-5][0-9])");
  private static final int NOON = 12;
  private static final int HOUR = 1;
  private static final int MINUTE = 2;
  private static final int HALF = 3;

  private ClockText() {}

  /** The time of day, or what to write instead. */
  public static Reading<LocalTime> read(String text) {
    String typed = text.strip().toLowerCase(Locale.ROOT);
    Matcher of24 = OF_24.matcher(typed);
    if (of24.matches()) {
      return Reading.of(LocalTime.of(number(of24.group(HOUR)), number(of24.group(MINUTE))));
    }
    Matcher of12 = OF_12.matcher(typed);
    if (of12.matches()) {
      boolean isAfterNoon = of12.group(HALF).equals("p");
      int hour = number(of12.group(HOUR)) % NOON + (isAfterNoon ? NOON : 0);
      int minute = Optional.ofNullable(of12.group(MINUTE)).map(ClockText::number).orElse(0);
      return Reading.of(LocalTime.of(hour, minute));
    }
    Matcher one = ONE_DIGIT.matcher(typed);
    if (one.matches()) {
      int hour = number(one.group(HOUR));
      return Reading.refused(
          "\""
              + text
              + "\" may be morning or evening: write "
              + LocalTime.of(hour, number(one.group(MINUTE)))
              + " or "
              + LocalTime.of(hour + NOON, number(one.group(MINUTE))));
    }
    return Reading.refused(
        "\"" + text + "\" is not a time of day: write hours and minutes, such as 21:30");
  }

  private static int number(String digits) {
    return Integer.parseInt(digits);
  }
}
