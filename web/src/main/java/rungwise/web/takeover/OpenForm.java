package rungwise.web.takeover;

import rungwise.clinic.takeover.TakingOver;
import rungwise.clinic.titration.DrawnMark;
import rungwise.dosing.known.Dose;
import rungwise.dosing.syringe.Marking;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * Opens the schedule at a part of what was told.
 *
 * @param most the most at which it may be opened: volume, mark and content
 */
public record OpenForm(String most, Field upTo, Field reason) {

  static final String REASON = "openReason";

  static OpenForm of(Dose most, Typed typed, Faults faults) {
    boolean isByUnits = most.barrel().marking() instanceof Marking.UnitLines;
    return new OpenForm(
        most.volumeAndMark() + ": " + most.preparation().contentOf(most.volume()),
        Field.of(
                Field.Kind.AMOUNT,
                TakingOver.UP_TO,
                isByUnits ? "First dose here: the line of the syringe" : "First dose here, in mL")
            .withHint("At most " + most.volumeAndMark() + "; a lower line is right too.")
            .withValue(DrawnMark.text(most.volume(), most.barrel()))
            .asTyped(typed)
            .withFaults(faults),
        Field.of(Field.Kind.TEXT, REASON, "Why, and what was read")
            .asTyped(typed)
            .withFaults(faults));
  }
}
