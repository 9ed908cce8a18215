package rungwise.web.page;

import rungwise.dosing.known.Dose;

/**
 * A dose as shown: volume first, then the mark, then what it contains, always together.
 *
 * @param volume such as "0.2 mL"
 * @param mark such as "20-unit mark on a 0.5 mL U-100 syringe"
 * @param composition the whole composition per mL
 * @param content what this volume contains of each component
 */
public record DoseLines(String volume, String mark, String composition, String content) {

  public DoseLines {
    if (volume.isBlank() || mark.isBlank() || composition.isBlank() || content.isBlank()) {
      throw new IllegalArgumentException("bug: a dose is shown whole or not at all");
    }
  }

  /** A dose, whole. */
  public static DoseLines of(Dose dose) {
    String mark =
        dose.barrel().hasMarkAt(dose.volume())
            ? dose.barrel().markWords(dose.volume())
            : dose.barrel().words();
    return new DoseLines(
        dose.volume().toString(), mark, dose.preparation().composition(), dose.content());
  }
}
