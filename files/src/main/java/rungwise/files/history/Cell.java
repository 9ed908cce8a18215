package rungwise.files.history;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * One value of a line, which notes what is wrong with it.
 *
 * @param line the number of the line
 * @param name the name of its column
 * @param text what stands there, without spaces around it
 * @param faults shared by the whole file
 */
record Cell(long line, String name, String text, List<Fault> faults) {

  private static final int LONGEST_SHOWN = 40;

  private static final Pattern UNSEEN = Pattern.compile("\\p{C}");

  boolean isEmpty() {
    return text.isEmpty();
  }

  /** Notes that this value is not what the column holds. */
  <T> Optional<T> refuse(String accepted) {
    String given = isEmpty() ? "nothing was given" : quoted(text) + " was given";
    note(given + ": " + accepted);
    return Optional.empty();
  }

  /** A number as {@link PlainNumber} reads it, within bounds. */
  Optional<Double> number(Bounds bounds, String accepted) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    double number = PlainNumber.decimal(bytes, 0, bytes.length);
    return bounds.hold(number) ? Optional.of(number) : refuse(accepted);
  }

  Optional<Integer> wholeNumber(int most, String accepted) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    int number = PlainNumber.whole(bytes, 0, bytes.length);
    return number >= 0 && number <= most ? Optional.of(number) : refuse(accepted);
  }

  /** The text, if it is written like the pattern. */
  Optional<String> like(Pattern pattern, String accepted) {
    return pattern.matcher(text).matches() ? Optional.of(text) : refuse(accepted);
  }

  /** What another reader makes of the text; its faults are noted. */
  <T> Optional<T> read(Function<String, Reading<T>> reader) {
    Reading<T> reading = reader.apply(text);
    reading.faults().forEach(this::note);
    return reading.found();
  }

  private void note(String what) {
    faults.add(new Fault(name, "line " + line + ": " + name + ": " + what));
  }

  /** A text from a file, short enough for a message and with nothing in it that acts. */
  static String quoted(String text) {
    String start = text.length() > LONGEST_SHOWN ? text.substring(0, LONGEST_SHOWN) + "..." : text;
    return '"' + UNSEEN.matcher(start).replaceAll("?") + '"';
  }
}
