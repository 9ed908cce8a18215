package rungwise.dosing.urgent.rescue;

import java.util.List;
import rungwise.dosing.source.Source;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.Marking;
import rungwise.quantities.Volume;

/**
 * Syringes with which a rescue is prepared: marked in millilitres, none in insulin units, because a
 * line of those is no amount of this drug.
 */
public final class RescueSyringes {

  /** Where their sizes and lines come from; the scales' lengths are those of ISO 7886-1. */
  public static final Source SOURCE =
      new Source.CommonPractice("usual sizes and lines: compare with the syringe in your hand");

  private static final Volume ONE_MILLILITRE = Volume.ofMicrolitres(1_000);
  private static final Volume TENTH = Volume.ofMicrolitres(100);
  private static final Volume FIFTH = Volume.ofMicrolitres(200);
  private static final Volume HALF = Volume.ofMicrolitres(500);

  /** The usual sizes, the smallest first. */
  public static final List<Barrel> USUAL =
      List.of(
          Barrels.MILLILITRE_1,
          sized(3, TENTH, HALF, 27),
          sized(5, FIFTH, ONE_MILLILITRE, 36),
          sized(10, HALF, ONE_MILLILITRE, 44),
          sized(20, ONE_MILLILITRE, ONE_MILLILITRE.times(5), 52),
          sized(50, ONE_MILLILITRE, ONE_MILLILITRE.times(10), 75));

  private RescueSyringes() {}

  private static Barrel sized(int millilitres, Volume line, Volume numbered, int scale) {
    Volume capacity = ONE_MILLILITRE.times(millilitres);
    return new Barrel(
        "rescue-ml-" + millilitres,
        capacity + " syringe marked in mL",
        capacity,
        new Marking.MillilitreLines(line, numbered, scale));
  }
}
