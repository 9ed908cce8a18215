package rungwise.dosing.supply;

import java.time.Instant;

/**
 * Until when a vial may be used.
 *
 * @param at the first instant at which it may not
 * @param by what ends it then
 * @param inUse whether the time of use once opened is known
 */
public record VialEnd(Instant at, VialLimit by, InUse inUse) {

  /** What is known of the time of use once opened. */
  public enum InUse {
    /** It is not open, or it is known for how long it may be. */
    KNOWN,
    /** It is open, and nobody has said for how long it may be. */
    OPEN_AND_NOT_STATED
  }

  /** A vial that is not open and ends by the date on its label. */
  public static VialEnd byLabel(Instant at) {
    return new VialEnd(at, new VialLimit.LabelDate(), InUse.KNOWN);
  }

  /** Whether it may still be used at an instant, as far as its limits are known. */
  public boolean isInDate(Instant now) {
    return now.isBefore(at);
  }
}
