package rungwise.web.running;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.sheet.ManLines;
import rungwise.clinic.start.ManDraft;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * Who he is, to be corrected.
 *
 * @param before who he was said to be before, in a line each
 */
public record IdentityForm(
    List<String> before,
    Field fullName,
    Field birthDate,
    Field recordNumber,
    Choice group,
    Choice namesake,
    Field reason) {

  static final String REASON = "identityReason";
  private static final String YES = "yes";

  public IdentityForm {
    before = List.copyOf(before);
  }

  static IdentityForm of(CourseFile file, Typed typed, Faults faults) {
    var man = file.patient();
    return new IdentityForm(
        ManLines.before(file),
        field(ManDraft.FULL_NAME, "Full name", man.fullName(), typed, faults),
        field(ManDraft.BIRTH_DATE, "Birth date", man.birthDate().toString(), typed, faults)
            .withHint("Year, month and day, such as 1961-04-30"),
        field(ManDraft.RECORD_NUMBER, "Record number", man.recordNumber(), typed, faults),
        Choice.of(
                ManDraft.GROUP,
                "Why he needs it",
                Arrays.stream(AetiologyGroup.values())
                    .map(one -> new Option(one.token(), one.words(), "", /* picked= */ false))
                    .toList())
            .withHint("Another group ends the signed dose: the first dose was found by it.")
            .withPicked(Set.of(file.opened().group().token()))
            .asTyped(typed)
            .withFaults(faults),
        Choice.of(
                ManDraft.NAMESAKE,
                "Only if another man is alike",
                List.of(
                    new Option(
                        YES, "I have looked: this is somebody else", "", /* picked= */ false)))
            .asTyped(typed)
            .withFaults(faults),
        field(REASON, "Why it is corrected", "", typed, faults));
  }

  private static Field field(String name, String label, String value, Typed typed, Faults faults) {
    return Field.of(Field.Kind.TEXT, name, label)
        .withValue(value)
        .asTyped(typed)
        .withFaults(faults);
  }

  static ManDraft draft(Typed typed) {
    return new ManDraft(
        typed.text(ManDraft.FULL_NAME),
        typed.text(ManDraft.BIRTH_DATE),
        typed.text(ManDraft.RECORD_NUMBER),
        typed.text(ManDraft.GROUP),
        typed.has(ManDraft.NAMESAKE, YES),
        typed.text(REASON));
  }

  /** Whether it was sent and refused, so that it stands open. */
  public boolean isRefused() {
    return List.of(
            fullName.fault(),
            birthDate.fault(),
            recordNumber.fault(),
            group.fault(),
            namesake.fault(),
            reason.fault())
        .stream()
        .anyMatch(fault -> !fault.isEmpty());
  }
}
