package rungwise.dosing.syringe;

import rungwise.quantities.MarkNumber;
import rungwise.quantities.Volume;

/**
 * How many units an insulin syringe counts in a millilitre. Only U-100 is ever ordered; the others
 * are known because the same line on them holds another volume (ISO 8537 scope).
 */
public enum UnitScale {
  U_40("U-40", 25),
  U_100("U-100", 10),
  U_500("U-500", 2);

  private static final int TENTHS_IN_ONE = 10;

  private final String words;
  private final Volume perUnit;

  UnitScale(String words, long microlitresPerUnit) {
    this.words = words;
    this.perUnit = Volume.ofMicrolitres(microlitresPerUnit);
  }

  /** "U-100". */
  public String words() {
    return words;
  }

  /** The volume between two whole unit numbers. */
  public Volume perUnit() {
    return perUnit;
  }

  /** The volume up to a line. */
  public Volume volumeAt(MarkNumber mark) {
    return mark.on(perUnit);
  }

  /**
   * The line at a volume.
   *
   * @throws IllegalArgumentException if no tenth of a unit lies there
   */
  public MarkNumber markAt(Volume volume) {
    Volume tenfold = volume.times(TENTHS_IN_ONE);
    if (!tenfold.isMultipleOf(perUnit)) {
      throw new IllegalArgumentException("bug: " + volume + " lies between two lines");
    }
    return new MarkNumber(tenfold.microlitres() / perUnit.microlitres());
  }

  /** How many times the volume of the intended scale the same line on this one holds. */
  public double volumeAtSameMark(UnitScale intended) {
    return perUnit.ratioTo(intended.perUnit);
  }

  /** "0.2 mL (20-unit mark on a U-100 syringe)": the volume first, so a mark is no amount. */
  public String wording(Volume volume) {
    return volume + " (" + markAt(volume) + " on a " + words + " syringe)";
  }
}
