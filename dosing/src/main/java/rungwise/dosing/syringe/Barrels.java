package rungwise.dosing.syringe;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Seen;
import rungwise.dosing.source.Source;
import rungwise.quantities.Volume;

/**
 * The syringes that are known: the U-100 sizes and graduations of ISO 8537:2007 Table 1 and clause
 * 9.2 (read in a machine-extracted copy, so a clinic compares them with the syringe in its hand),
 * and the devices that carry no unit marks.
 */
public final class Barrels {

  private static final Volume HALF_UNIT = Volume.ofMicrolitres(5);
  private static final Volume ONE_UNIT = Volume.ofMicrolitres(10);
  private static final Volume TWO_UNITS = Volume.ofMicrolitres(20);
  private static final Volume FIVE_UNITS = Volume.ofMicrolitres(50);
  private static final Volume TEN_UNITS = Volume.ofMicrolitres(100);
  private static final Volume CAPACITY_0_3 = Volume.ofMicrolitres(300);
  private static final Volume CAPACITY_0_5 = Volume.ofMicrolitres(500);
  private static final Volume CAPACITY_1 = Volume.ofMicrolitres(1000);
  private static final int SCALE_0_3_MILLIMETRES = 41;
  private static final int SCALE_0_5_MILLIMETRES = 43;
  private static final int SCALE_1_MILLIMETRES = 57;

  public static final Barrel U100_0_3_HALF_UNIT =
      u100(
          "u100-0.3-half",
          CAPACITY_0_3,
          HALF_UNIT,
          FIVE_UNITS,
          SCALE_0_3_MILLIMETRES,
          " with half-unit lines");
  public static final Barrel U100_0_3 =
      u100("u100-0.3", CAPACITY_0_3, ONE_UNIT, FIVE_UNITS, SCALE_0_3_MILLIMETRES, "");
  public static final Barrel U100_0_5 =
      u100("u100-0.5", CAPACITY_0_5, ONE_UNIT, FIVE_UNITS, SCALE_0_5_MILLIMETRES, "");
  public static final Barrel U100_1 =
      u100("u100-1", CAPACITY_1, ONE_UNIT, TEN_UNITS, SCALE_1_MILLIMETRES, "");
  public static final Barrel U100_1_TWO_UNIT =
      u100(
          "u100-1-two",
          CAPACITY_1,
          TWO_UNITS,
          TEN_UNITS,
          SCALE_1_MILLIMETRES,
          " with two-unit lines");

  /** A 1 mL syringe marked in hundredths of a millilitre (common practice, no source). */
  public static final Barrel MILLILITRE_1 =
      new Barrel(
          "ml-1",
          "1 mL syringe marked in mL",
          CAPACITY_1,
          new Marking.MillilitreLines(ONE_UNIT, TEN_UNITS, SCALE_1_MILLIMETRES));

  /** A prefilled dual-chamber syringe that holds half a millilitre (US drug listing). */
  public static final Barrel PREFILLED_0_5 =
      new Barrel("prefilled-0.5", "0.5 mL prefilled syringe", CAPACITY_0_5, new Marking.NoLines());

  public static final Barrel CARTRIDGE_1 =
      new Barrel("cartridge-1", "1 mL cartridge device", CAPACITY_1, new Marking.NoLines());

  private static final List<Barrel> ALL =
      List.of(
          U100_0_3_HALF_UNIT,
          U100_0_3,
          U100_0_5,
          U100_1,
          U100_1_TWO_UNIT,
          MILLILITRE_1,
          PREFILLED_0_5,
          CARTRIDGE_1);

  /** No known device holds more. */
  public static final Volume LARGEST =
      ALL.stream().map(Barrel::capacity).max(Comparator.naturalOrder()).orElseThrow();

  private Barrels() {}

  private static Barrel u100(
      String token, Volume capacity, Volume graduation, Volume numbered, int length, String more) {
    return new Barrel(
        token,
        capacity + " " + UnitScale.U_100.words() + " syringe" + more,
        capacity,
        new Marking.UnitLines(graduation, numbered, length));
  }

  /** Every known syringe and device. */
  public static List<Barrel> all() {
    return ALL;
  }

  /** Where the size and the lines of a syringe come from. */
  public static Source sourceOf(Barrel barrel) {
    return switch (barrel.marking()) {
      case Marking.UnitLines lines ->
          new Source.Published(
              Citation.ISO_8537_2007,
              "a machine-extracted text: compare with the syringe in your hand",
              Seen.READ_IN_SECONDARY_COPY);
      case Marking.MillilitreLines lines ->
          new Source.CommonPractice("compare with the syringe in your hand");
      case Marking.NoLines none ->
          new Source.CommonPractice("compare with the device in your hand");
    };
  }

  public static Optional<Barrel> of(String token) {
    return ALL.stream().filter(barrel -> barrel.token().equals(token)).findFirst();
  }

  /** The largest volume that any marked syringe holds: a ceiling above it cannot be drawn. */
  public static Volume largestCapacity() {
    return CAPACITY_1;
  }

  /**
   * The syringe on which a volume is best read: the smallest that has a line there, and of two of
   * one size the finer.
   */
  public static Optional<Barrel> smallestFor(Volume volume, List<Barrel> among) {
    return among.stream()
        .filter(barrel -> barrel.hasMarkAt(volume))
        .min(
            Comparator.comparing(Barrel::capacity)
                .thenComparing(barrel -> barrel.marking().graduationVolume().orElseThrow()));
  }
}
