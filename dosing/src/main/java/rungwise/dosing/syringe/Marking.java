package rungwise.dosing.syringe;

import java.util.Optional;
import rungwise.quantities.Volume;

/** The lines printed on a device. */
public sealed interface Marking {

  /**
   * The lines of a U-100 insulin syringe.
   *
   * @param graduation the volume between two neighbouring lines
   * @param numberedEvery the volume between two numbered lines
   * @param scaleMillimetres the smallest length of the whole scale that ISO 8537 allows
   */
  record UnitLines(Volume graduation, Volume numberedEvery, int scaleMillimetres)
      implements Marking {}

  /** Lines in millilitres, as on a 1 mL tuberculin syringe. */
  record MillilitreLines(Volume graduation, Volume numberedEvery, int scaleMillimetres)
      implements Marking {}

  /** A device that is recorded and not drawn, as no line of it is known here. */
  record NoLines() implements Marking {}

  /** The volume between two neighbouring lines; none where there are no lines. */
  default Optional<Volume> graduationVolume() {
    return switch (this) {
      case UnitLines lines -> Optional.of(lines.graduation());
      case MillilitreLines lines -> Optional.of(lines.graduation());
      case NoLines none -> Optional.empty();
    };
  }
}
