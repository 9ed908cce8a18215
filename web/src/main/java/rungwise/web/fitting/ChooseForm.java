package rungwise.web.fitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.util.MultiValueMap;
import rungwise.clinic.fitting.FitDraft;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.HeldField;

/**
 * The form that chooses courses.
 *
 * @param reference empty where the clinic keeps no preparation
 * @param isRunning whether a fit runs or has ended, that can be looked at
 */
public record ChooseForm(
    Faults faults,
    List<Choice> reference,
    Choice groups,
    Field from,
    Field to,
    Choice files,
    boolean isRunning) {

  /** The field that says whether histories without a named preparation count. */
  static final String FILES = "files";

  private static final String YES = "yes";

  public ChooseForm {
    reference = List.copyOf(reference);
  }

  /** What was sent. */
  static FitDraft draft(MultiValueMap<String, String> form) {
    return new FitDraft(
        first(form, FitDraft.REFERENCE),
        new HashSet<>(form.getOrDefault(FitDraft.GROUPS, List.of())),
        first(form, FitDraft.FROM),
        first(form, FitDraft.TO),
        first(form, FILES).equals(YES));
  }

  private static String first(MultiValueMap<String, String> form, String name) {
    return form.getOrDefault(name, List.of()).stream().findFirst().orElse("");
  }

  /** Everything, as the form begins. */
  static FitDraft whole() {
    return new FitDraft(
        "",
        Arrays.stream(AetiologyGroup.values())
            .map(AetiologyGroup::token)
            .collect(Collectors.toUnmodifiableSet()),
        "",
        "",
        false);
  }

  static ChooseForm of(
      List<Preparation> preparations, FitDraft draft, Faults faults, boolean isRunning) {
    return new ChooseForm(
        faults,
        preparations.isEmpty() ? List.of() : List.of(reference(preparations, draft, faults)),
        groups(draft).withFaults(faults),
        day(FitDraft.FROM, "Begun from", draft.from(), faults),
        day(FitDraft.TO, "Begun up to", draft.to(), faults),
        files(draft),
        isRunning);
  }

  private static Choice reference(List<Preparation> preparations, FitDraft draft, Faults faults) {
    return Choice.of(
            FitDraft.REFERENCE,
            "Preparation of strength 1",
            preparations.stream()
                .map(one -> new Option(one.id().value(), one.toString(), "", false))
                .toList())
        .withHint(
            "Courses count while they are on it, or on another strength of the same single"
                + " component.")
        .withPicked(Set.of(draft.reference()))
        .withFaults(faults);
  }

  private static Choice groups(FitDraft draft) {
    return Choice.of(
            FitDraft.GROUPS,
            "Men whose aetiology is",
            Arrays.stream(AetiologyGroup.values())
                .map(group -> new Option(group.token(), group.words(), "", false))
                .toList())
        .withHint("A group of fewer than 10 courses speaks against the fit.")
        .withPicked(draft.groups());
  }

  private static Field day(String name, String label, String value, Faults faults) {
    return Field.of(Field.Kind.DATE, name, label)
        .withHint("The day of a man's first injection. Empty: any day.")
        .optional()
        .withValue(value)
        .withFaults(faults);
  }

  private static Choice files(FitDraft draft) {
    return Choice.of(
            FILES,
            "Histories that were brought in and name no preparation",
            List.of(
                new Option(
                    YES,
                    "Count them",
                    "Only if the strengths in their file are in relation to the preparation above.",
                    false)))
        .withPicked(draft.countsFiles() ? Set.of(YES) : Set.of());
  }

  /** The same choice as fields that are sent along unseen. */
  static List<HeldField> held(FitDraft draft) {
    var held = new ArrayList<HeldField>();
    held.add(new HeldField(FitDraft.REFERENCE, draft.reference()));
    draft.groups().stream()
        .sorted()
        .forEach(group -> held.add(new HeldField(FitDraft.GROUPS, group)));
    held.add(new HeldField(FitDraft.FROM, draft.from()));
    held.add(new HeldField(FitDraft.TO, draft.to()));
    held.add(new HeldField(FILES, draft.countsFiles() ? YES : ""));
    return List.copyOf(held);
  }
}
