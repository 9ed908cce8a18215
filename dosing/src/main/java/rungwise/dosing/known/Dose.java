package rungwise.dosing.known;

import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Volume;

/**
 * A volume of a preparation in a syringe.
 *
 * @param volume stands on a printed line of the barrel, or the barrel has no lines
 */
public record Dose(Volume volume, Preparation preparation, Barrel barrel) {

  public Dose {
    if (barrel.marking().graduationVolume().isPresent() && !barrel.hasMarkAt(volume)) {
      throw new IllegalArgumentException("bug: " + volume + " is on no line of a " + barrel);
    }
  }

  /** "0.2 mL (20-unit mark on a 0.5 mL U-100 syringe)". */
  public String volumeAndMark() {
    String mark =
        barrel.hasMarkAt(volume) ? barrel.markWords(volume) : barrel.words() + ", no marks known";
    return volume + " (" + mark + ")";
  }

  /** "papaverine 6 mg, phentolamine 0.2 mg, alprostadil 2 mcg". */
  public String content() {
    return preparation.contentOf(volume);
  }

  /** Volume, then mark, then composition, then content: the only way a dose is ever written. */
  @Override
  public String toString() {
    return volumeAndMark() + " of " + preparation.composition() + ": " + content();
  }
}
