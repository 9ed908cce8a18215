package rungwise.files;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A JSON object (RFC 8259) that is only written. Keys keep the order in which they were given, so
 * the same values are the same text. Numbers keep every digit that tells a double from its
 * neighbours.
 */
public final class JsonObject {

  private static final int FIRST_PRINTABLE = 0x20;

  private final List<String> members;

  private JsonObject(List<String> members) {
    this.members = List.copyOf(members);
  }

  public static JsonObject empty() {
    return new JsonObject(List.of());
  }

  public JsonObject with(String key, String text) {
    return plus(key, quoted(text));
  }

  /**
   * Adds a number.
   *
   * @throws IllegalArgumentException if it is not finite, as JSON has no word for that
   */
  public JsonObject with(String key, double number) {
    return plus(key, decimal(key, number));
  }

  public JsonObject with(String key, boolean answer) {
    return plus(key, Boolean.toString(answer));
  }

  public JsonObject with(String key, JsonObject inner) {
    return plus(key, inner.toString());
  }

  public JsonObject withObjects(String key, List<JsonObject> inner) {
    return plus(key, listed(inner.stream().map(JsonObject::toString).toList()));
  }

  public JsonObject withTexts(String key, List<String> texts) {
    return plus(key, listed(texts.stream().map(JsonObject::quoted).toList()));
  }

  /**
   * Adds numbers.
   *
   * @throws IllegalArgumentException if one is not finite
   */
  public JsonObject withNumbers(String key, List<Double> numbers) {
    return plus(key, listed(key, numbers));
  }

  /** Adds a table of numbers, a list for each row; with the same fault. */
  public JsonObject withRows(String key, List<List<Double>> rows) {
    return plus(key, listed(rows.stream().map(row -> listed(key, row)).toList()));
  }

  public JsonObject withNothing(String key) {
    return plus(key, "null");
  }

  private JsonObject plus(String key, String value) {
    var more = new ArrayList<>(members);
    more.add(quoted(key) + ":" + value);
    return new JsonObject(more);
  }

  private static String listed(String key, List<Double> numbers) {
    return listed(numbers.stream().map(number -> decimal(key, number)).toList());
  }

  private static String decimal(String key, double number) {
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException("bug: " + key + " is " + number);
    }
    BigDecimal shortest = BigDecimal.valueOf(number);
    return shortest.signum() == 0 ? "0" : shortest.stripTrailingZeros().toPlainString();
  }

  private static String listed(List<String> values) {
    return values.stream().collect(Collectors.joining(",", "[", "]"));
  }

  private static String quoted(String text) {
    return text.codePoints()
        .mapToObj(JsonObject::escaped)
        .collect(Collectors.joining("", "\"", "\""));
  }

  private static String escaped(int point) {
    if (point == '"' || point == '\\') {
      return "\\" + Character.toString(point);
    }
    boolean isControl = point < FIRST_PRINTABLE;
    boolean isHalfOfAPair = Character.getType(point) == Character.SURROGATE;
    return isControl || isHalfOfAPair ? String.format("\\u%04x", point) : Character.toString(point);
  }

  /** The object on one line. */
  @Override
  public String toString() {
    return members.stream().collect(Collectors.joining(",", "{", "}"));
  }
}
