package rungwise.web.page;

import java.util.Comparator;
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

  /** The same faults in the order of a form's fields; those of the form as a whole come first. */
  public Faults inOrderOf(List<String> fields) {
    return new Faults(
        all.stream().sorted(Comparator.comparingInt(f -> fields.indexOf(f.field()))).toList());
  }

  /** The words for one field, sentences one after the other; empty if there is none. */
  public String of(String field) {
    return all.stream()
        .filter(fault -> fault.field().equals(field))
        .map(Fault::text)
        .collect(Collectors.joining(" "));
  }
}
