package rungwise.web.factor;

import java.util.List;
import java.util.Optional;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.HeldField;

/**
 * The question for the second factor as shown, with everything that was typed before it.
 *
 * @param action where the form goes: on with what was begun
 * @param held the fields of what was begun
 * @param isSetUp whether there is a second factor to ask for
 * @param hasCodes whether a code can be given
 * @param passkeyScript address of the script, where a passkey can be used
 * @param hours how long it counts
 */
public record StepUpPage(
    String action,
    List<HeldField> held,
    boolean isSetUp,
    boolean hasCodes,
    Optional<String> passkeyScript,
    long hours,
    Field code,
    Faults faults) {

  public StepUpPage {
    held = List.copyOf(held);
  }

  static Field code(Optional<String> fault, boolean isSetUp) {
    Field field =
        Field.of(Field.Kind.TEXT, Prover.CODE, "Code")
            .withHint("6 digits from your authenticator app, or a recovery code.")
            .withAutocomplete("one-time-code")
            .withFaults(faults(fault));
    return isSetUp ? field : field.whereSaid();
  }

  static Faults faults(Optional<String> fault) {
    return fault.map(text -> new Faults(List.of(new Fault(Prover.CODE, text)))).orElse(Faults.NONE);
  }
}
