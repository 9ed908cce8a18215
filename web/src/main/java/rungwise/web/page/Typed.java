package rungwise.web.page;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A form as typed: the values of each field by its name, in their order; an absent one is empty.
 */
public record Typed(Map<String, List<String>> fields) {

  public static final Typed NOTHING = new Typed(Map.of());

  public Typed {
    fields =
        fields.entrySet().stream()
            .collect(
                Collectors.toUnmodifiableMap(Map.Entry::getKey, e -> List.copyOf(e.getValue())));
  }

  /** What was typed into a field. */
  public String text(String name) {
    return fields.getOrDefault(name, List.of()).stream().findFirst().orElse("");
  }

  /** Whether the form that came has a field of that name. */
  public boolean holds(String name) {
    return fields.containsKey(name);
  }

  /** Everything that was ticked under a name. */
  public Set<String> all(String name) {
    return new LinkedHashSet<>(fields.getOrDefault(name, List.of()));
  }

  /** Whether that value was ticked. */
  public boolean has(String name, String value) {
    return all(name).contains(value);
  }

  /** The same with one field filled with exactly that. */
  public Typed with(String name, String value) {
    var changed = new LinkedHashMap<>(fields);
    changed.put(name, List.of(value));
    return new Typed(changed);
  }

  /** The same with exactly these ticked under a name. */
  public Typed withAll(String name, List<String> values) {
    var changed = new LinkedHashMap<>(fields);
    changed.put(name, values);
    return new Typed(changed);
  }
}
