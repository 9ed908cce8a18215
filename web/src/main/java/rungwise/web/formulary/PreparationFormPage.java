package rungwise.web.formulary;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rungwise.dosing.known.Component;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Fault;
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

  /** One component: an empty strength leaves it out. */
  public record Row(String component, Field strength, Field limit) {}

  public PreparationFormPage {
    notices = List.copyOf(notices);
    rows = List.copyOf(rows);
  }

  static PreparationFormPage of(PreparationForm form, Optional<String> changes) {
    return new PreparationFormPage(
        changes.map(id -> "/preparations/" + id + "/change").orElse("/preparations/new"),
        changes.isPresent(),
        Faults.NONE,
        List.of(),
        field(Field.Kind.TEXT, "name", "What the clinic calls it", form.name()),
        forms(form),
        field(Field.Kind.AMOUNT, "diluent", "Diluent, in mL", form.diluent())
            .withHint("For a powder")
            .optional(),
        field(
                Field.Kind.COUNT,
                "usableHours",
                "Usable once dissolved, in hours",
                form.usableHours())
            .withHint("For a powder")
            .optional(),
        field(Field.Kind.AMOUNT, "fill", "Fill, in mL", form.fill())
            .withHint("For a prefilled syringe or a cartridge")
            .optional(),
        rows(form),
        field(
                Field.Kind.AMOUNT,
                "ceiling",
                "Maximum volume of one injection, in mL",
                form.ceiling())
            .withHint("At most 1 mL: no larger syringe is known"),
        field(Field.Kind.TEXT, "preservative", "Preservative", form.preservative()).optional(),
        inUse(form),
        field(Field.Kind.COUNT, "inUseDays", "Days after opening", form.inUseDays()).optional());
  }

  PreparationFormPage withFaults(List<String> found) {
    return with(new Faults(found.stream().map(Fault::ofForm).toList()), notices);
  }

  PreparationFormPage withNotices(List<String> found) {
    return with(faults, found);
  }

  private PreparationFormPage with(Faults newFaults, List<String> newNotices) {
    return new PreparationFormPage(
        path,
        isChange,
        newFaults,
        newNotices,
        name,
        form,
        diluent,
        usableHours,
        fill,
        rows,
        ceiling,
        preservative,
        inUse,
        inUseDays);
  }

  private static Field field(Field.Kind kind, String name, String label, @Nullable String value) {
    return Field.of(kind, name, label).withValue(PreparationForm.said(value));
  }

  private static List<Row> rows(PreparationForm form) {
    return Arrays.stream(Component.values()).map(component -> row(component, form)).toList();
  }

  private static Row row(Component component, PreparationForm form) {
    String unit = component.unit().word();
    return new Row(
        component.fullName(),
        new Field(
            "strength",
            "Strength, in " + unit + " per mL",
            "",
            Field.Kind.AMOUNT,
            "off",
            form.strengthOf(component),
            "",
            false),
        new Field(
            "limit",
            "Most in one injection, in " + unit,
            "",
            Field.Kind.AMOUNT,
            "off",
            form.limitOf(component),
            "",
            false));
  }

  private static Choice forms(PreparationForm form) {
    return Choice.of(
            "form",
            "Form",
            List.of(
                new Option("solution", "solution in a vial", "", false),
                new Option("powder", "powder in a vial, to be dissolved", "", false),
                new Option("prefilled", "prefilled syringe", "", false),
                new Option("cartridge", "cartridge", "", false)))
        .withPicked(Set.of(PreparationForm.said(form.form())));
  }

  private static Choice inUse(PreparationForm form) {
    return Choice.of(
            "inUse",
            "How long an opened vial may be used",
            List.of(
                new Option("single_use", "one injection, then it is thrown away", "", false),
                new Option("days", "a number of days after opening", "", false),
                new Option(
                    "not_stated",
                    "nobody has said: ask the pharmacy",
                    "28 days belong only to a preserved vial whose maker says nothing else.",
                    false)))
        .withPicked(Set.of(PreparationForm.said(form.inUse())));
  }
}
