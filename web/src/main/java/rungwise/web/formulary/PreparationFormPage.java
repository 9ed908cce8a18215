package rungwise.web.formulary;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.formulary.PreparationDraft;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.UsualStrengths;
import rungwise.quantities.Concentration;
import rungwise.quantities.Reading;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The form for a preparation.
 *
 * @param isChange whether it makes a new version of one that is kept
 * @param notices what must be confirmed before it is kept
 */
public record PreparationFormPage(
    String path,
    String backPath,
    boolean isChange,
    Faults faults,
    List<String> notices,
    Field name,
    Choice form,
    Field diluent,
    Field usableHours,
    Field fill,
    List<Row> rows,
    Field ceiling,
    Field preservative,
    Choice inUse,
    Field inUseDays) {

  /**
   * One component: an empty strength leaves it out.
   *
   * @param again the same strength once more, where it lies far outside the usual ones
   */
  public record Row(String component, Field strength, Optional<Field> again, Field limit) {}

  public PreparationFormPage {
    notices = List.copyOf(notices);
    rows = List.copyOf(rows);
  }

  /** What the check box sends that confirms the notices. */
  public String confirmation() {
    return PreparationForm.wordsOf(notices);
  }

  static PreparationFormPage of(PreparationForm form, Optional<String> changes) {
    return of(form, changes, Faults.NONE, List.of());
  }

  static PreparationFormPage of(
      PreparationForm typed, Optional<String> changes, Faults faults, List<String> notices) {
    String backPath = changes.map(id -> "/preparations/" + id).orElse("/preparations");
    return new PreparationFormPage(
        changes.isPresent() ? backPath + "/change" : backPath + "/new",
        backPath,
        changes.isPresent(),
        faults,
        notices,
        field(Field.Kind.TEXT, Preparation.NAME, "What the clinic calls it", typed)
            .withHint("Never shown without the composition")
            .withFaults(faults),
        forms(typed).withFaults(faults),
        field(Field.Kind.AMOUNT, PreparationDraft.DILUENT, "Diluent, in mL", typed)
            .withHint("Only for a powder: what makes the strength below, such as 1")
            .whereSaid()
            .withFaults(faults),
        field(
                Field.Kind.COUNT,
                PreparationDraft.USABLE_HOURS,
                "Usable once dissolved, in hours",
                typed)
            .withHint("Only for a powder, such as 24")
            .whereSaid()
            .withFaults(faults),
        field(Field.Kind.AMOUNT, PreparationDraft.FILL, "Fill, in mL", typed)
            .withHint("Only for a prefilled syringe or a cartridge, such as 0.5")
            .whereSaid()
            .withFaults(faults),
        Arrays.stream(Component.values()).map(one -> row(one, typed, faults)).toList(),
        ceiling(typed).withFaults(faults),
        field(Field.Kind.TEXT, PreparationDraft.PRESERVATIVE, "Preservative", typed)
            .withHint("As the label names it; empty if there is none")
            .optional()
            .withFaults(faults),
        Questions.inUse(typed.said(PreparationDraft.IN_USE)).withFaults(faults),
        Questions.inUseDays(typed.said(PreparationDraft.IN_USE_DAYS)).withFaults(faults));
  }

  private static Field field(Field.Kind kind, String name, String label, PreparationForm typed) {
    return Field.of(kind, name, label).withValue(typed.said(name));
  }

  /** The fields from top to bottom. */
  private static final List<String> ORDER =
      Stream.of(
              Stream.of(
                  Preparation.NAME,
                  PreparationDraft.FORM,
                  PreparationDraft.DILUENT,
                  PreparationDraft.USABLE_HOURS,
                  PreparationDraft.FILL),
              Arrays.stream(Component.values())
                  .flatMap(
                      one ->
                          Stream.of(
                              PreparationDraft.strengthOf(one),
                              PreparationDraft.againOf(one),
                              PreparationDraft.limitOf(one))),
              Stream.of(
                  Preparation.CEILING,
                  PreparationDraft.PRESERVATIVE,
                  PreparationDraft.IN_USE,
                  PreparationDraft.IN_USE_DAYS))
          .flatMap(fields -> fields)
          .toList();

  /** What was refused, each at its field; what is wrong with all components at the first one's. */
  static Faults placed(Reading.Refused<?> refused) {
    String first = PreparationDraft.strengthOf(Component.PAPAVERINE);
    return Faults.of(
            refused.placed(), field -> field.equals(Preparation.COMPONENTS) ? first : field)
        .inOrderOf(ORDER);
  }

  private static Field ceiling(PreparationForm typed) {
    String label = "Maximum volume of one injection, in mL";
    return field(Field.Kind.AMOUNT, Preparation.CEILING, label, typed)
        .withHint("At most 1, as no larger syringe is known");
  }

  private static Row row(Component component, PreparationForm typed, Faults faults) {
    String unit = component.unit().word();
    return new Row(
        component.fullName(),
        field(
                Field.Kind.AMOUNT,
                PreparationDraft.strengthOf(component),
                "Strength, in " + unit + " per mL",
                typed)
            .whereSaid()
            .withFaults(faults),
        again(component, typed, faults),
        field(
                Field.Kind.AMOUNT,
                PreparationDraft.limitOf(component),
                "Most in one injection, in " + unit,
                typed)
            .optional()
            .withFaults(faults));
  }

  private static Optional<Field> again(Component component, PreparationForm typed, Faults faults) {
    String name = PreparationDraft.againOf(component);
    return Concentration.parsePerMillilitre(
            component.unit(), typed.said(PreparationDraft.strengthOf(component)))
        .found()
        .flatMap(strength -> UsualStrengths.notice(component, strength))
        .map(
            notice ->
                field(
                        Field.Kind.AMOUNT,
                        name,
                        "The same strength again, in " + component.unit().word() + " per mL",
                        typed)
                    .withHint("Read it from the label once more; do not copy what stands above")
                    .withFaults(faults));
  }

  private static Choice forms(PreparationForm typed) {
    return Choice.of(
            PreparationDraft.FORM,
            "Form",
            List.of(
                new Option("solution", "solution in a vial", "", false),
                new Option("powder", "powder in a vial, to be dissolved", "", false),
                new Option("prefilled", "prefilled syringe", "", false),
                new Option("cartridge", "cartridge", "", false)))
        .withPicked(Set.of(typed.said(PreparationDraft.FORM)));
  }
}
