package rungwise.web.page;

import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** All that is wrong with a form, in the order of its fields. */
public record Faults(List<Fault> all) {

  public static final Faults NONE = new Faults(List.of());

  public Faults {
    all = List.copyOf(all);
  }

  public boolean isEmpty() {
    return all.isEmpty();
  }

  /** Faults of the form as a whole. */
  public static Faults ofForm(List<String> texts) {
    return new Faults(texts.stream().map(Fault::ofForm).toList());
  }

  /** What was refused, each at its field. */
  public static Faults of(Reading.Refused<?> refused) {
    return new Faults(refused.placed());
  }

  /** What was refused, each at the page's field of that name. */
  public static Faults of(List<Fault> faults, UnaryOperator<String> nameOf) {
    return new Faults(
        faults.stream()
            .map(
                fault ->
                    fault.field().isEmpty()
                        ? fault
                        : new Fault(nameOf.apply(fault.field()), fault.text()))
            .toList());
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
