package rungwise.web.supply;

import java.util.List;
import rungwise.clinic.supply.VialDraft;
import rungwise.dosing.known.Component;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/** Makes the fields of one form of a vial. */
record VialFields(VialForm form, Faults faults) {

  VialPage.Fields of(List<Component> ordered, List<Component> others) {
    return new VialPage.Fields(
        field(Field.Kind.TEXT, VialDraft.LOT, "Lot"),
        ordered.stream().map(this::strength).toList(),
        others.stream().map(this::strength).map(Field::optional).toList(),
        others.stream().anyMatch(one -> !form.said(VialDraft.strengthOf(one)).isBlank()),
        field(Field.Kind.DATE, VialDraft.MADE, "Made").optional(),
        field(Field.Kind.DATE, VialDraft.BEYOND_USE, "Beyond-use date"),
        field(Field.Kind.DATE, VialDraft.OPENED, "Opened").optional(),
        field(Field.Kind.TEXT, VialDraft.OPENED_AT, "Opened at")
            .withHint("24-hour clock; where hours count, such as for a dissolved powder")
            .whereSaid(),
        field(Field.Kind.COUNT, VialDraft.DAYS_IN_USE, "Days of use once opened")
            .withHint("Where the label limits them, such as 28")
            .whereSaid(),
        field(Field.Kind.TEXT, VialDraft.DEVICE, "Syringe or device handed out with it")
            .optional());
  }

  /** Those of a vial that nobody ordered: any component may be on its label. */
  VialPage.Fields ofAny() {
    VialPage.Fields fields = of(List.of(Component.values()), List.of());
    return fields.withOrdered(
        fields.ordered().stream()
            .map(one -> one.withHint("At least one component is on every label.").whereSaid())
            .toList());
  }

  private Field strength(Component component) {
    String label = component.fullName() + ", in " + component.unit().word() + " per mL";
    return field(Field.Kind.AMOUNT, VialDraft.strengthOf(component), label);
  }

  private Field field(Field.Kind kind, String name, String label) {
    return Field.of(kind, form.nameOf(name), label).withValue(form.said(name)).withFaults(faults);
  }
}
