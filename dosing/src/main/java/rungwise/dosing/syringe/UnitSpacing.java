package rungwise.dosing.syringe;

import java.util.Optional;

/**
 * How far apart the units stand on a U-100 syringe whose scale is as short as ISO 8537:2007 Table 1
 * allows: the shorter the scale, the more a slip of the eye costs.
 *
 * @param scaleMillimetres length of the whole scale, more than 0
 * @param units the number at its last line, more than 0
 */
public record UnitSpacing(int scaleMillimetres, double units) {

  public UnitSpacing {
    if (!(scaleMillimetres > 0 && units > 0)) {
      throw new IllegalArgumentException(
          "bug: " + units + " units on " + scaleMillimetres + " millimetres");
    }
  }

  /** The spacing on a syringe; none for a device without unit lines. */
  public static Optional<UnitSpacing> of(Barrel barrel) {
    return switch (barrel.marking()) {
      case Marking.UnitLines lines -> Optional.of(of(barrel, lines));
      case Marking.MillilitreLines lines -> Optional.empty();
      case Marking.NoLines none -> Optional.empty();
    };
  }

  private static UnitSpacing of(Barrel barrel, Marking.UnitLines lines) {
    double units = barrel.capacity().ratioTo(UnitScale.U_100.perUnit());
    return new UnitSpacing(lines.scaleMillimetres(), units);
  }

  /** The distance between two whole unit numbers, in millimetres. */
  public double millimetresPerUnit() {
    return scaleMillimetres / units;
  }

  /** How many units a reading is off by that misses the line by one millimetre. */
  public double unitsPerMillimetre() {
    return units / scaleMillimetres;
  }
}
