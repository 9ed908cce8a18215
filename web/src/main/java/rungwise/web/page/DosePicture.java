package rungwise.web.page;

import java.util.Optional;
import rungwise.dosing.known.Dose;
import rungwise.dosing.syringe.Barrel;
import rungwise.drawing.BarrelDrawing;
import rungwise.drawing.DrawnDose;
import rungwise.drawing.MarkWords;
import rungwise.sheets.BarrelScales;

/** A dose as a drawn syringe, where the syringe has lines to draw. */
public final class DosePicture {

  private DosePicture() {}

  /**
   * The drawing as one svg element; none for a device without lines.
   *
   * @param idPrefix begins the ids in the drawing, so that a page may hold several
   */
  public static Optional<String> svg(Dose dose, String idPrefix) {
    Barrel barrel = dose.barrel();
    return BarrelScales.of(barrel)
        .map(
            scale -> {
              String mark = barrel.markName(dose.volume());
              var drawn = new DrawnDose(scale, dose.volume(), mark, barrel.words());
              return BarrelDrawing.svg(drawn, idPrefix);
            });
  }

  /** "two small lines past the 10": how a reader finds the line; none for a device without. */
  public static Optional<String> markWords(Dose dose) {
    return BarrelScales.of(dose.barrel()).map(scale -> MarkWords.of(scale, dose.volume()));
  }
}
