package rungwise.clinic.formulary;

import java.util.ArrayList;
import java.util.List;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.supply.InUseRule;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * What must be said before a published composition is kept.
 *
 * @param isCompared whether it was compared with the label in the hand
 * @param inUse one of "single_use", "days", "not_stated"
 * @param inUseDays whole days after opening
 */
public record SampleDraft(boolean isCompared, String inUse, String inUseDays) {

  /** The field that says that it was compared. */
  public static final String COMPARED = "compared";

  private static final String NOT_COMPARED =
      "The comparison is missing: hold the label beside this page, compare each component and"
          + " strength, and say so.";

  /** The rule for an opened vial, or everything that is missing. */
  Reading<InUseRule> inUseRule(Preparation sample) {
    Reading<InUseRule> reading =
        InUseReading.read(inUse, inUseDays, sample.preservative().isPresent());
    if (isCompared) {
      return reading;
    }
    List<Fault> faults = new ArrayList<>(reading.placed());
    faults.add(new Fault(COMPARED, NOT_COMPARED));
    return new Reading.Refused<>(faults);
  }
}
