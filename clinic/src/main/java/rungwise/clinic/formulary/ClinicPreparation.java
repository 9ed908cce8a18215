package rungwise.clinic.formulary;

import java.util.Optional;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.supply.InUseRule;

/**
 * One version of a preparation as the clinic keeps it. It never changes; a change is another
 * version, and what was ordered of this one stays readable.
 *
 * @param replaces the version that this one took the place of
 */
public record ClinicPreparation(
    Preparation preparation, InUseRule inUse, Optional<PreparationId> replaces) {

  public ClinicPreparation {
    if (replaces.filter(preparation.id()::equals).isPresent()) {
      throw new IllegalArgumentException("bug: " + preparation.id() + " replaces itself");
    }
  }

  public PreparationId id() {
    return preparation.id();
  }
}
