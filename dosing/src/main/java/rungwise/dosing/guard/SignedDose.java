package rungwise.dosing.guard;

import java.util.Optional;
import java.util.Set;
import rungwise.dosing.history.Place;
import rungwise.quantities.Volume;

/**
 * A dose that a prescriber signed.
 *
 * @param overridden the holds that the prescriber overrode with a coded reason; a hard stop is
 *     never among them
 * @param nextStep the one step that may follow without a new signature, if it was switched on
 */
public record SignedDose(
    Volume volume, Place place, Set<GuardRule> overridden, Optional<Volume> nextStep) {

  public SignedDose {
    overridden = Set.copyOf(overridden);
    if (overridden.stream().anyMatch(rule -> rule.guardClass() != GuardClass.HOLD)) {
      throw new IllegalArgumentException("bug: only a hold can be overridden: " + overridden);
    }
  }
}
