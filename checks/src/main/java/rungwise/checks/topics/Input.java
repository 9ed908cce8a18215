package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import rungwise.quantities.Reading;

/**
 * The named inputs of a row. It remembers which of them a topic asked for, so that an input that
 * was not looked at is a fault and never a silent guess.
 */
public final class Input {

  /** The last input of a row that holds free text, in which a semicolon is a semicolon. */
  private static final String FREE_TEXT = "text";

  private final Map<String, String> values;
  private final Set<String> asked = new HashSet<>();

  private Input(Map<String, String> values) {
    this.values = values;
  }

  /**
   * Reads inputs such as "op=units_to_mL;units=20". A part without "=" is a remark: a name with an
   * empty value.
   *
   * @throws InputFault if a name is empty, or given twice with different values
   */
  public static Input parse(String text) {
    var values = new LinkedHashMap<String, String>();
    String rest = text;
    while (!rest.isBlank()) {
      boolean free = rest.startsWith(FREE_TEXT + "=");
      int end = free || rest.indexOf(';') < 0 ? rest.length() : rest.indexOf(';');
      String part = free ? rest : rest.substring(0, end).strip();
      int equals = part.indexOf('=');
      String name = equals < 0 ? part : part.substring(0, equals).strip();
      String value = equals < 0 ? "" : part.substring(equals + 1);
      if (name.isEmpty()) {
        throw new InputFault("the input \"" + part + "\" has no name before its \"=\"");
      }
      String before = values.put(name, value);
      if (before != null && !before.equals(value)) {
        throw new InputFault("the input " + name + " is given twice, with different values");
      }
      rest = end < rest.length() ? rest.substring(end + 1) : "";
    }
    return new Input(values);
  }

  /** Whether an input of that name is there; asking does not count as using it. */
  public boolean has(String name) {
    return values.containsKey(name);
  }

  /** The value of an input that need not be there. */
  public Optional<String> find(String name) {
    asked.add(name);
    return Optional.ofNullable(values.get(name));
  }

  /**
   * The value of an input.
   *
   * @throws InputFault if it is missing
   */
  public String text(String name) {
    return find(name)
        .filter(value -> !value.isBlank())
        .orElseThrow(() -> new InputFault("the input " + name + " is missing"));
  }

  /**
   * The value of an input as a plain number, for inputs that are not an amount.
   *
   * @throws InputFault if it is missing or not a number
   */
  public BigDecimal decimal(String name) {
    String given = text(name);
    try {
      return new BigDecimal(given);
    } catch (NumberFormatException e) {
      throw new InputFault("the input " + name + " is not a number: \"" + given + "\"");
    }
  }

  /**
   * The value of an input as the product reads it.
   *
   * @throws InputFault if the product refuses it, with the product's own words
   */
  public <T> T read(String name, Function<String, Reading<T>> reader) {
    return valueOf(name, reader.apply(text(name)));
  }

  /**
   * The value of an input as one of a closed set.
   *
   * @throws InputFault if it is none of them
   */
  public <T> T one(String name, Function<String, Optional<T>> reader) {
    String given = text(name);
    return reader
        .apply(given)
        .orElseThrow(
            () -> new InputFault("the input " + name + " is not known: \"" + given + "\""));
  }

  /** Marks an input as understood where its value changes nothing. */
  public void note(String... names) {
    asked.addAll(Set.of(names));
  }

  private static <T> T valueOf(String name, Reading<T> reading) {
    return reading
        .found()
        .orElseThrow(
            () -> new InputFault("the input " + name + ": " + String.join("; ", reading.faults())));
  }

  /** The names that no topic asked for. */
  public Set<String> neglected() {
    var names = new TreeSet<>(values.keySet());
    names.removeAll(asked);
    return names;
  }
}
