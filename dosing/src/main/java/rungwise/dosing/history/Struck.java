package rungwise.dosing.history;

import java.util.Optional;
import rungwise.dosing.known.DurationLimits;

/**
 * A report that was corrected or withdrawn, which no prescriber has confirmed to be wrong. Whoever
 * may write a report may correct it; only a prescriber lifts what it stopped or closed.
 *
 * @param said what the report said
 * @param now the number of the entry that stands there instead
 * @param instead what that says of the injection; empty if the report was withdrawn
 * @param isContradicted whether the report is contradicted as a whole, whatever is said instead of
 *     this one of the labels that it may have been of
 */
public record Struck(
    Injection said, long now, Optional<Injection> instead, boolean isContradicted) {

  /** A report as it was read. */
  public Struck(Injection said, long now, Optional<Injection> instead) {
    this(said, now, instead, /* isContradicted= */ false);
  }

  /**
   * Whether it goes on closing, stopping and holding: unless what is said now completes it. A
   * report that is contradicted counts whole, whatever one of its readings is completed by.
   */
  public boolean counts() {
    return isContradicted || instead.filter(now -> now.completes(said)).isEmpty();
  }

  /**
   * Whether it still is, or may be, an emergency. Four hours in so many words wait for a prescriber
   * whatever is said now, unless that is an emergency as well. What could only have become one is
   * lifted by a known end before 4 hours, whoever writes it down.
   */
  public boolean mayBeEmergency() {
    if (!said.mayBeEmergency()) {
      return false;
    }
    if (!counts() && instead.orElseThrow().mayBeEmergency()) {
      return false;
    }
    return said.soft().saysEmergency()
        || instead
            .filter(now -> now.soft().isKnownBelow(DurationLimits.EMERGENCY.value()))
            .isEmpty();
  }

  /** Whether a prescriber who confirms that the report was wrong lifts anything. */
  public boolean isToConfirm() {
    return mayBeEmergency() || (counts() && said.forbidsHigherDose());
  }

  /** Whether that injection is what is said now instead of this one. */
  boolean isReplacedBy(Injection other) {
    return instead.filter(one -> one.entry() == other.entry()).isPresent();
  }
}
