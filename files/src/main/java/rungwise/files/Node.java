package rungwise.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import rungwise.clinic.OutsideText;
import rungwise.quantities.Reading;

/**
 * A place in a document, which notes what is wrong there and lets the reader go on, so that all
 * faults are found in one pass.
 *
 * @param path what a person would call the place, such as "steps 2, add"
 * @param content what the document holds there
 * @param faults shared by the whole document
 */
record Node(String path, Optional<Object> content, List<String> faults) {

  static Node root(Object document) {
    return new Node("", Optional.of(document), new ArrayList<>());
  }

  /** Notes a fault at this place. */
  <T> Optional<T> fault(String what) {
    faults.add((path.isEmpty() ? "the document" : path) + ": " + what);
    return Optional.empty();
  }

  /** The place under a key; keys that are not among the known ones are faults. */
  Node at(String key) {
    Optional<Object> value = content.flatMap(Node::asMap).map(map -> map.get(key));
    return new Node(path.isEmpty() ? key : path + ", " + key, value, faults);
  }

  /** Refuses every key that nobody reads, because a misspelt rule must not be silently absent. */
  Node onlyWith(String... keys) {
    Optional<Map<?, ?>> map = content.flatMap(Node::asMap);
    if (content.isPresent() && map.isEmpty()) {
      fault("must be a set of keys with values");
    }
    map.ifPresent(
        found -> {
          var unknown = new TreeSet<String>();
          found.keySet().forEach(key -> unknown.add(String.valueOf(key)));
          Set.of(keys).forEach(unknown::remove);
          if (!unknown.isEmpty()) {
            fault("unknown " + unknown + "; known are " + new TreeSet<>(Set.of(keys)));
          }
        });
    return this;
  }

  private static Optional<Map<?, ?>> asMap(Object value) {
    return value instanceof Map<?, ?> map ? Optional.of(map) : Optional.empty();
  }

  boolean isPresent() {
    return content.isPresent();
  }

  /** The places of a list; a fault if there is none or it is empty. */
  List<Node> items() {
    if (content.orElse("") instanceof List<?> list && !list.isEmpty()) {
      var nodes = new ArrayList<Node>();
      for (Object item : list) {
        String name = path + " " + (nodes.size() + 1);
        nodes.add(new Node(name, Optional.ofNullable(item), faults));
      }
      return nodes;
    }
    fault("must be a list with at least one entry");
    return List.of();
  }

  /** The text here; a fault if there is none. */
  Optional<String> text() {
    if (content.orElse("") instanceof String text && !text.isBlank()) {
      Optional<String> hidden = OutsideText.hiddenIn("This text", text);
      return hidden.isPresent() ? fault(hidden.get()) : Optional.of(text);
    }
    return fault("must be a text");
  }

  /** The whole number here, within bounds; a fault otherwise. */
  Optional<Integer> wholeNumber(int least, int most) {
    if (content.orElse("") instanceof Integer number && number >= least && number <= most) {
      return Optional.of(number);
    }
    return fault("must be a whole number from " + least + " to " + most);
  }

  /** The number here; a fault if there is none. */
  Optional<Double> number() {
    return content.orElse("") instanceof Double number && Double.isFinite(number)
        ? Optional.of(number)
        : fault("must be a number");
  }

  /** The keys of the set here, in the order of the document; a fault if it is none. */
  List<String> keys() {
    Optional<Map<?, ?>> map = content.flatMap(Node::asMap);
    if (map.isEmpty()) {
      fault("must be a set of keys with values");
    }
    return map.stream().flatMap(found -> found.keySet().stream()).map(String::valueOf).toList();
  }

  /** The yes or no here; a fault otherwise. */
  Optional<Boolean> yesOrNo() {
    return content.orElse("") instanceof Boolean value
        ? Optional.of(value)
        : fault("must be true or false");
  }

  /** The value that a parser reads here; its faults are noted. */
  <T> Optional<T> read(Function<String, Reading<T>> parser) {
    return text()
        .flatMap(
            text -> {
              Reading<T> reading = parser.apply(text);
              reading.faults().forEach(this::fault);
              return reading.found();
            });
  }
}
