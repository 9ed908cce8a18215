package rungwise.web.right;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import rungwise.clinic.access.AccessReason;
import rungwise.clinic.access.CourseAccess;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.HeldField;

/**
 * The question why a course is opened as shown.
 *
 * @param action where the answer goes: on to what was asked for
 * @param held the fields of what was begun
 * @param hours how long the access counts
 */
public record TakeAccessPage(
    String action, List<HeldField> held, Choice reason, Field words, long hours, Faults faults) {

  public TakeAccessPage {
    held = List.copyOf(held);
  }

  static TakeAccessPage of(
      String action, List<HeldField> held, TakeAccessForm form, Faults faults) {
    Choice reasons =
        Choice.of(
                CourseAccess.REASON,
                "Why do you open it?",
                Arrays.stream(AccessReason.values())
                    .map(
                        reason ->
                            new Choice.Option(
                                reason.name(), reason.words(), "", /* picked= */ false))
                    .toList())
            .withFaults(faults);
    return new TakeAccessPage(
        action,
        held,
        form.reason().map(picked -> reasons.withPicked(Set.of(picked.name()))).orElse(reasons),
        Field.of(Field.Kind.TEXT, CourseAccess.WORDS, "In your words")
            .withHint("Needed for another reason; helps whoever reads it later.")
            .withValue(form.words())
            .withFaults(faults)
            .whereSaid(),
        CourseAccess.GOOD_FOR.toHours(),
        faults);
  }
}
