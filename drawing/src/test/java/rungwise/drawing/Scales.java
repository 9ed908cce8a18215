package rungwise.drawing;

import java.util.List;
import rungwise.quantities.Volume;

/** The scales of ISO 8537:2007 Table 1 and a 1 mL syringe marked in hundredths of a millilitre. */
final class Scales {

  static final BarrelScale HALF_UNIT = units(300, 5, 50, 41);
  static final BarrelScale SMALL = units(300, 10, 50, 41);
  static final BarrelScale MIDDLE = units(500, 10, 50, 43);
  static final BarrelScale LARGE = units(1000, 10, 100, 57);
  static final BarrelScale LARGE_TWO_UNIT = units(1000, 20, 100, 57);
  static final BarrelScale MILLILITRES =
      new BarrelScale(
          Volume.ofMicrolitres(1000),
          Volume.ofMicrolitres(10),
          Volume.ofMicrolitres(100),
          ScaleNumbers.MILLILITRES,
          57);

  private Scales() {}

  private static BarrelScale units(
      long capacity, long graduation, long numberedEvery, int millimetres) {
    return new BarrelScale(
        Volume.ofMicrolitres(capacity),
        Volume.ofMicrolitres(graduation),
        Volume.ofMicrolitres(numberedEvery),
        ScaleNumbers.U_100_UNITS,
        millimetres);
  }

  static List<BarrelScale> all() {
    return List.of(HALF_UNIT, SMALL, MIDDLE, LARGE, LARGE_TWO_UNIT, MILLILITRES);
  }

  static DrawnDose dose(BarrelScale scale, long microlitres) {
    Volume volume = Volume.ofMicrolitres(microlitres);
    return new DrawnDose(
        scale, volume, scale.numbers().at(volume) + "-unit mark", "syringe of " + scale.capacity());
  }

  /** One dose for every line that can be drawn up to. */
  static List<DrawnDose> everyDose(BarrelScale scale) {
    return scale.lines().stream()
        .filter(line -> line.isMoreThan(Volume.ZERO))
        .map(line -> dose(scale, line.microlitres()))
        .toList();
  }
}
