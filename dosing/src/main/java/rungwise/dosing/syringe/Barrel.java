package rungwise.dosing.syringe;

import java.util.Optional;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Volume;

/**
 * A type of syringe or device.
 *
 * @param token its name in files and forms, such as "u100-0.5"
 * @param words its name on screens and orders, such as "0.5 mL U-100 syringe"
 * @param capacity the volume at its last line, or what the device holds
 */
public record Barrel(String token, String words, Volume capacity, Marking marking) {

  public Barrel {
    if (token.isBlank() || words.isBlank() || capacity.equals(Volume.ZERO)) {
      throw new IllegalArgumentException("bug: an unfinished syringe " + token);
    }
  }

  /** Whether a printed line stands at that volume. */
  public boolean hasMarkAt(Volume volume) {
    return marking
        .graduationVolume()
        .filter(step -> volume.isMultipleOf(step))
        .filter(step -> volume.isMoreThan(Volume.ZERO))
        .filter(step -> !volume.isMoreThan(capacity))
        .isPresent();
  }

  /**
   * The last printed line that is not above a wanted volume; none if that lies below the first
   * line, beyond the last one, or the device has no lines.
   */
  public Optional<Volume> markAtOrBelow(ExactVolume wanted) {
    return marking.graduationVolume().map(wanted::roundDownTo).filter(this::hasMarkAt);
  }

  /** The same, and the last line of all for more than the device holds. */
  public Optional<Volume> lastMarkWithin(ExactVolume most) {
    ExactVolume whole = ExactVolume.of(capacity);
    return markAtOrBelow(most.compareTo(whole) > 0 ? whole : most);
  }

  /**
   * "20-unit mark on a 0.5 mL U-100 syringe".
   *
   * @throws IllegalArgumentException if no line stands there
   */
  public String markWords(Volume volume) {
    return markName(volume) + " on a " + words;
  }

  /**
   * "20-unit mark", or "0.2 mL line" on a syringe marked in mL.
   *
   * @throws IllegalArgumentException if no line stands there
   */
  public String markName(Volume volume) {
    if (!hasMarkAt(volume)) {
      throw new IllegalArgumentException("bug: no line of a " + words + " at " + volume);
    }
    return switch (marking) {
      case Marking.UnitLines lines -> UnitScale.U_100.markAt(volume).toString();
      case Marking.MillilitreLines lines -> volume + " line";
      case Marking.NoLines none -> throw new IllegalStateException("bug: a device without lines");
    };
  }

  @Override
  public String toString() {
    return words;
  }
}
