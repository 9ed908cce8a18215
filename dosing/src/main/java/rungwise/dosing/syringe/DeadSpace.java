package rungwise.dosing.syringe;

import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Volume;

/** What stays in a syringe and its needle when the plunger is down. */
public final class DeadSpace {

  /** A needle that is fixed to its insulin syringe. */
  public static final Sourced<Volume> FIXED_NEEDLE =
      new Sourced<>(
          Volume.ofMicrolitres(11),
          Source.read(Citation.DEAD_SPACE_1986, "wasted with each injection, fixed needle"));

  /** An ordinary syringe with a needle put on it. */
  public static final Sourced<Volume> PUT_ON_NEEDLE =
      new Sourced<>(
          Volume.ofMicrolitres(84),
          Source.secondary(Citation.LOW_DEAD_SPACE, "ordinary syringe and hub, up to"));

  /** A needle of 23 or 21 G alone, and one of 18 G. */
  private static final Volume THIN = Volume.ofMicrolitres(50);

  private static final Volume THICK = Volume.ofMicrolitres(70);

  private static final int DAYS_IN_A_YEAR = 365;
  private static final int MICROLITRES = 1000;

  private DeadSpace() {}

  /** The most that the standard allows a syringe of a nominal size, of the sizes that were read. */
  public static Optional<Sourced<Volume>> limit(Volume nominal) {
    return switch ((int) nominal.microlitres()) {
      case 1000, 2500 -> sourced(Volume.ofMicrolitres(70), "limit of ISO 7886-1:2018");
      case 5000 -> sourced(Volume.ofMicrolitres(75), "limit of ISO 7886-1:2018");
      case 10_000 -> sourced(Volume.ofMicrolitres(100), "limit of ISO 7886-1:2018");
      default -> Optional.empty();
    };
  }

  /** What was measured in a needle of a gauge, of those that were measured. */
  public static Optional<Sourced<Volume>> ofNeedle(int gauge) {
    return switch (gauge) {
      case 21, 23 -> sourced(THIN, "needles of 23 and 21 G");
      case 18 -> sourced(THICK, "needles of 18 G");
      default -> Optional.empty();
    };
  }

  private static Optional<Sourced<Volume>> sourced(Volume volume, String place) {
    return Optional.of(new Sourced<>(volume, Source.read(Citation.DEAD_SPACE_STUDY, place)));
  }

  /** What one injection wastes where so much is wasted in a year, in microlitres. */
  public static double microlitresEach(Volume yearly, int injectionsADay) {
    return (double) yearly.microlitres() / (DAYS_IN_A_YEAR * injectionsADay);
  }

  /** The same in millilitres. */
  public static double millilitresEach(Volume yearly, int injectionsADay) {
    return microlitresEach(yearly, injectionsADay) / MICROLITRES;
  }
}
