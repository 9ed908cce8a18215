package rungwise.dosing.guard;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.history.Place;
import rungwise.quantities.Volume;

/**
 * A dose that a prescriber signed.
 *
 * @param overridden the holds that the prescriber overrode with a reason; a hard stop is never
 *     among them
 * @param nextStep the one step that may follow without a new signature, if it was switched on
 * @param entry the number of the entry by which it was signed
 */
public record SignedDose(
    Volume volume,
    Place place,
    Set<OverriddenHold> overridden,
    Optional<Volume> nextStep,
    long entry) {

  /** A dose that is signed after everything that is on record. */
  public SignedDose(
      Volume volume, Place place, Set<OverriddenHold> overridden, Optional<Volume> nextStep) {
    this(volume, place, overridden, nextStep, Long.MAX_VALUE);
  }

  public SignedDose {
    overridden = Set.copyOf(overridden);
  }

  /** What is left of verdicts at an instant when those that were overridden are taken away. */
  public List<Verdict> less(List<Verdict> verdicts, Instant now) {
    boolean isInClinic = place == Place.CLINIC;
    return verdicts.stream()
        .filter(
            verdict -> overridden.stream().noneMatch(one -> one.lifts(verdict, isInClinic, now)))
        .toList();
  }
}
