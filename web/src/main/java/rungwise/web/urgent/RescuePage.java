package rungwise.web.urgent;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.urgent.rescue.Asked;
import rungwise.dosing.urgent.rescue.Mixing;
import rungwise.quantities.MassUnit;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.HeldField;

/**
 * The page: the question, and above it what there is to say.
 *
 * @param dilution the fields of a dilution, in order; those that are typed twice beside each other
 * @param besideDilution what was typed of a blood gas, sent along with a dilution
 * @param gas the fields of a blood gas
 * @param besideGas what was typed of a dilution, sent along with a blood gas
 */
public record RescuePage(
    Faults faults,
    List<Field> stock,
    Choice way,
    List<Field> dilution,
    List<Field> dose,
    List<HeldField> besideDilution,
    List<Field> gas,
    List<HeldField> besideGas,
    Optional<Prepared> prepared,
    Optional<GasLine> gasLine) {

  public RescuePage {
    stock = List.copyOf(stock);
    dilution = List.copyOf(dilution);
    dose = List.copyOf(dose);
    besideDilution = List.copyOf(besideDilution);
    gas = List.copyOf(gas);
    besideGas = List.copyOf(besideGas);
  }

  static RescuePage of(RescueForm.Outcome outcome) {
    RescueForm form = outcome.form();
    Faults faults = outcome.faults();
    return new RescuePage(
        faults,
        twice(
            form,
            faults,
            field(RescueForm.STOCK, "Strength on the stock's label")
                .withHint("With its unit, such as 10 mg/mL. No ratio.")),
        way(form).withFaults(faults),
        List.of(
            filled(form, field(RescueForm.WANTED, "Strength to be given"), usualWanted())
                .withHint(RescueFacts.strengths())
                .withFaults(faults),
            filled(form, field(RescueForm.TOTAL, "Total volume of it"), Asked.TOTAL.example())
                .withHint("With its unit, such as 10 mL")
                .withFaults(faults)),
        twice(
            form,
            faults,
            field(RescueForm.DOSE, "One dose")
                .withHint("With its unit, such as 100 mcg. It is chosen by who treats him.")),
        form.held(/* ofGas= */ true),
        gas(form, faults),
        form.held(/* ofGas= */ false),
        Prepared.of(outcome),
        outcome.gas().flatMap(GasLine::of));
  }

  private static String usualWanted() {
    return Mixing.USUAL_WANTED.value().in(MassUnit.MICROGRAM);
  }

  private static Field field(String name, String label) {
    return Field.of(Field.Kind.TEXT, name, label);
  }

  private static Field filled(RescueForm form, Field field, String otherwise) {
    boolean isTyped = form.typed().containsKey(field.name());
    return field.withValue(isTyped ? form.said(field.name()) : otherwise);
  }

  /** A field, and beside it the second one where it is asked for or was filled. */
  private static List<Field> twice(RescueForm form, Faults faults, Field field) {
    Field once = field.withValue(form.said(field.name())).withFaults(faults);
    String again = RescueForm.again(field.name());
    boolean isAsked = !faults.of(again).isEmpty() || !form.said(again).isEmpty();
    return isAsked
        ? List.of(
            once,
            field(again, field.label() + ", a second time")
                .withHint("Read it anew and type it, not from the field before.")
                .withValue(form.said(again))
                .withFaults(faults))
        : List.of(once);
  }

  private static Choice way(RescueForm form) {
    String picked = form.typed().getOrDefault(RescueForm.WAY, RescueForm.TWO_STEPS);
    return Choice.of(
            RescueForm.WAY,
            "How it is prepared",
            List.of(
                new Option(
                    RescueForm.TWO_STEPS, "In two steps", "The usual way", /* picked= */ false),
                new Option(
                    RescueForm.ONE_STEP,
                    "In one step",
                    "Only where every part can be drawn well",
                    /* picked= */ false),
                new Option(
                    RescueForm.AS_LABELLED,
                    "Not diluted: a label of " + RescueFacts.strengths(),
                    "Its strength is typed twice; the two fields below are not used",
                    /* picked= */ false)))
        .withPicked(Set.of(picked));
  }

  private static List<Field> gas(RescueForm form, Faults faults) {
    return List.of(
            field(RescueForm.OXYGEN, "pO2").withHint("With its unit, such as 25 mmHg or 3.3 kPa"),
            field(RescueForm.CARBON_DIOXIDE, "pCO2")
                .withHint("With its unit, such as 65 mmHg or 8.7 kPa"),
            field(RescueForm.PH, "pH").withHint("Such as 7.2"))
        .stream()
        .flatMap(one -> twice(form, faults, one).stream())
        .toList();
  }
}
