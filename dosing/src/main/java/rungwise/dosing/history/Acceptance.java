package rungwise.dosing.history;

import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * A prescriber's written decision, with a signature, that an erection may last over an hour at one
 * dose. Whatever lasted longer than that at it, or nobody knows how long, still waits.
 *
 * @param entry the number of the record's entry that says so
 * @param volume the dose that was signed
 * @param upTo more than an hour and less than two
 */
public record Acceptance(long entry, Preparation preparation, Volume volume, TimeSpan upTo) {

  public Acceptance {
    if (!isPossible(upTo)) {
      throw new IllegalArgumentException("bug: " + upTo + " was accepted");
    }
  }

  /** Whether that long may be accepted: over an hour, and under the two that close a volume. */
  public static boolean isPossible(TimeSpan upTo) {
    return upTo.isMoreThan(DurationLimits.NO_HIGHER_DOSE.value())
        && upTo.isLessThan(DurationLimits.CLOSES_VOLUME.value());
  }

  /** Whether it speaks of what an injection of that very dose did. */
  boolean covers(Injection injection) {
    return injection.preparation().isSameAs(preparation)
        && injection.drawn().equals(volume)
        && injection.soft().isKnown()
        && !injection.soft().mayPass(upTo);
  }
}
