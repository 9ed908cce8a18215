package rungwise.sheets;

import java.util.Optional;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Marking;
import rungwise.drawing.BarrelScale;
import rungwise.drawing.ScaleNumbers;

/** The scale of a syringe, for its drawing. */
public final class BarrelScales {

  private BarrelScales() {}

  /** The printed lines of a syringe; none for a device without. */
  public static Optional<BarrelScale> of(Barrel barrel) {
    return switch (barrel.marking()) {
      case Marking.UnitLines lines ->
          Optional.of(
              new BarrelScale(
                  barrel.capacity(),
                  lines.graduation(),
                  lines.numberedEvery(),
                  ScaleNumbers.U_100_UNITS,
                  lines.scaleMillimetres()));
      case Marking.MillilitreLines lines ->
          Optional.of(
              new BarrelScale(
                  barrel.capacity(),
                  lines.graduation(),
                  lines.numberedEvery(),
                  ScaleNumbers.MILLILITRES,
                  lines.scaleMillimetres()));
      case Marking.NoLines none -> Optional.empty();
    };
  }
}
