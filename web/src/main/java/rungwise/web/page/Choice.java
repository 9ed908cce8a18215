package rungwise.web.page;

import java.util.List;
import java.util.Set;

/**
 * Something picked from a list that is all on the page: a select, radio buttons or check boxes.
 *
 * @param name its name in the form, also its id on the page
 * @param label the question
 * @param hint what helps to answer it; may be empty
 * @param options what can be picked, in the order shown
 * @param fault what is wrong with it; empty if nothing is
 */
public record Choice(String name, String label, String hint, List<Option> options, String fault) {

  /**
   * One thing that can be picked.
   *
   * @param value what the form sends
   * @param label what the person reads
   * @param hint what it means; may be empty
   * @param picked whether it is picked now
   */
  public record Option(String value, String label, String hint, boolean picked) {}

  public Choice {
    options = List.copyOf(options);
    if (options.isEmpty()) {
      throw new IllegalArgumentException("bug: a choice of nothing");
    }
  }

  public static Choice of(String name, String label, List<Option> options) {
    return new Choice(name, label, "", options, "");
  }

  public Choice withHint(String text) {
    return new Choice(name, label, text, options, fault);
  }

  public Choice withFaults(Faults faults) {
    return new Choice(name, label, hint, options, faults.of(name));
  }

  /** The same choice with exactly these values picked. */
  public Choice withPicked(Set<String> values) {
    List<Option> marked =
        options.stream()
            .map(o -> new Option(o.value(), o.label(), o.hint(), values.contains(o.value())))
            .toList();
    return new Choice(name, label, hint, marked, fault);
  }

  /** The same with what was picked; as it is where it was not part of the form that came. */
  public Choice asTyped(Typed typed) {
    return typed.holds(name) ? withPicked(typed.all(name)) : this;
  }

  /** The page id of an option: the first carries the choice's own, so that a link finds it. */
  public String idOf(Option option) {
    int at = options.indexOf(option);
    return at == 0 ? name : name + "-" + at;
  }

  /** Ids of the texts that describe it, for aria-describedby; empty if there are none. */
  public String describedBy() {
    return Describing.ids(name, hint, fault);
  }
}
