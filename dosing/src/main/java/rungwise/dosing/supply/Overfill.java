package rungwise.dosing.supply;

import java.util.Map;
import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Volume;

/** What a maker fills in beyond the label, so that the labelled volume can be drawn. No dose. */
public final class Overfill {

  private static final Source SOURCE = Source.read(Citation.USP_1151, "mobile liquids");

  /** By the labelled microlitres. */
  private static final Map<Long, Long> EXCESS =
      Map.of(
          500L, 100L, 1000L, 100L, 2000L, 150L, 5000L, 300L, 10_000L, 500L, 20_000L, 600L, 30_000L,
          800L);

  private static final long PARTS_FROM = 50_000;
  private static final long ONE_IN = 50;

  private Overfill() {}

  /** The excess for a labelled volume, of those that the text names. */
  public static Optional<Sourced<Volume>> excess(Volume labelled) {
    long microlitres = labelled.microlitres();
    Optional<Long> found =
        microlitres >= PARTS_FROM
            ? Optional.of(microlitres / ONE_IN)
            : Optional.ofNullable(EXCESS.get(microlitres));
    return found.map(Volume::ofMicrolitres).map(volume -> new Sourced<>(volume, SOURCE));
  }
}
