package rungwise.files.history;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import rungwise.quantities.Reading;

/**
 * One value of a line, which notes what is wrong with it.
 *
 * @param line the number of the line
 * @param name the name of its column
 * @param text what stands there, without spaces around it
 * @param faults shared by the whole file
 */
record Cell(long line, String name, String text, List<String> faults) {

  private static final int LONGEST_SHOWN = 40;

  /** Digits with at most one point, as the texts of people; no exponent, no sign. */
  private static final Pattern DECIMAL = Pattern.compile("[0-9]{1,9}(?:\\.[0-9]{1,20})?");

  private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

  private static final Pattern UNSEEN = Pattern.compile("\\p{C}");

  boolean isEmpty() {
    return text.isEmpty();
  }

  /** Notes that this value is not what the column holds. */
  <T> Optional<T> refuse(String accepted) {
    String given = isEmpty() ? "nothing was given" : quoted(text) + " was given";
    faults.add("line " + line + ": " + name + ": " + given + ": " + accepted);
    return Optional.empty();
  }

  /** A number more than, or not less than, the least and at most the most. */
  Optional<Double> number(double least, boolean orEqual, double most, String accepted) {
    if (!DECIMAL.matcher(text).matches()) {
      return refuse(accepted);
    }
    double number = new BigDecimal(text).doubleValue();
    boolean isEnough = orEqual ? number >= least : number > least;
    return isEnough && number <= most ? Optional.of(number) : refuse(accepted);
  }

  Optional<Integer> wholeNumber(int most, String accepted) {
    if (!WHOLE.matcher(text).matches()) {
      return refuse(accepted);
    }
    int number = Integer.parseInt(text);
    return number <= most ? Optional.of(number) : refuse(accepted);
  }

  /** The text, if it is written like the pattern. */
  Optional<String> like(Pattern pattern, String accepted) {
    return pattern.matcher(text).matches() ? Optional.of(text) : refuse(accepted);
  }

  /** What another reader makes of the text; its faults are noted. */
  <T> Optional<T> read(Function<String, Reading<T>> reader) {
    Reading<T> reading = reader.apply(text);
    reading.faults().forEach(fault -> faults.add("line " + line + ": " + name + ": " + fault));
    return reading.found();
  }

  /** A text from a file, short enough for a message and with nothing in it that acts. */
  static String quoted(String text) {
    String start = text.length() > LONGEST_SHOWN ? text.substring(0, LONGEST_SHOWN) + "..." : text;
    return '"' + UNSEEN.matcher(start).replaceAll("?") + '"';
  }
}
