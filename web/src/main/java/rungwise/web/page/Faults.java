package rungwise.web.page;

import java.util.List;
import java.util.stream.Collectors;

/** All that is wrong with a form, in the order of its fields. */
public record Faults(List<Fault> all) {

  public static final Faults NONE = new Faults(List.of());

  public Faults {
    all = List.copyOf(all);
  }

  public boolean isEmpty() {
    return all.isEmpty();
  }

  /** The words for one field, sentences one after the other; empty if there is none. */
  public String of(String field) {
    return all.stream()
        .filter(fault -> fault.field().equals(field))
        .map(Fault::text)
        .collect(Collectors.joining(" "));
  }
}
