package rungwise.clinic.clock;

import java.time.Instant;

/**
 * When something is told, by the clock.
 *
 * @param isKnown whether the clock is believed; else nothing is refused because of it
 */
public record Present(Instant now, boolean isKnown) {

  /** Whether an instant that was told cannot have been yet. */
  public boolean isStillToCome(Instant at) {
    return isKnown && at.isAfter(now);
  }
}
