package rungwise.dosing.syringe;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Volume;

/**
 * How far the volume in a syringe may lie from the one that was meant: half a graduation of reading
 * error and the tolerance of the barrel. Kept in nanolitres, so that the limits are exact.
 *
 * @param volume the volume that is meant, more than 0
 * @param readingNanolitres half the distance between two lines
 * @param toleranceNanolitres the barrel's permitted deviation at that volume
 */
public record DrawingError(Volume volume, long readingNanolitres, long toleranceNanolitres) {

  /** The source of {@link #toleranceNanolitres}: remembered, and from a general standard. */
  public static final Source TOLERANCE_SOURCE =
      Source.remembered(
          Citation.ISO_7886_1,
          "below 5 mL: 1.5 % of capacity + 2 % of volume below half, 5 % of volume from half;"
              + " a general standard that excludes insulin syringes");

  /** From which part of the dose a smaller syringe or a weaker strength is asked for. */
  public static final Sourced<Integer> ASK_FOR_ANOTHER_ABOVE_PERCENT =
      new Sourced<>(25, new Source.Assumption("a quarter of the dose is half a usual step"));

  /** From which part of the dose a warning is shown. */
  public static final Sourced<Integer> WARN_ABOVE_PERCENT =
      new Sourced<>(15, new Source.Assumption("more than the strength limits of most products"));

  /** How far the strength of a compounded product may lie from its label. */
  public static final Sourced<Integer> LABEL_TOLERANCE_PERCENT =
      new Sourced<>(
          10, Source.secondary(Citation.USP_797, "within 10 percent where no monograph says"));

  /** Below this volume published errors are unacceptable. */
  public static final Sourced<Volume> BLOCK_BELOW =
      new Sourced<>(
          Volume.ofMicrolitres(20),
          Source.read(Citation.CASELLA_1993, "below the 2-unit mark (0.02 mL) unacceptably large"));

  /** At or below this volume published errors are near a tenth. */
  public static final Sourced<Volume> WARN_AT_OR_BELOW =
      new Sourced<>(
          Volume.ofMicrolitres(50),
          Source.read(Citation.LTEIF_1999, "9.9 % mean error below the 5-unit mark, 3.2 % above"));

  private static final long NANOLITRES = 1000;
  private static final long PERCENT = 100;
  private static final long CAPACITY_PART_PER_THOUSAND = 15;
  private static final long VOLUME_PART_PER_THOUSAND = 20;
  private static final long FROM_HALF_PART_PER_THOUSAND = 50;

  public DrawingError {
    if (!volume.isMoreThan(Volume.ZERO) || readingNanolitres < 0 || toleranceNanolitres < 0) {
      throw new IllegalArgumentException("bug: an error budget of " + volume);
    }
  }

  /** The error budget of a volume in a barrel; none for a device without lines. */
  public static Optional<DrawingError> of(Volume volume, Barrel barrel) {
    return barrel
        .marking()
        .graduationVolume()
        .map(
            step ->
                new DrawingError(
                    volume,
                    step.microlitres() * NANOLITRES / 2,
                    toleranceNanolitres(barrel.capacity(), volume)));
  }

  /** The permitted deviation of a barrel of that capacity at that volume. */
  public static long toleranceNanolitres(Volume capacity, Volume volume) {
    if (volume.times(2).isLessThan(capacity)) {
      return capacity.microlitres() * CAPACITY_PART_PER_THOUSAND
          + volume.microlitres() * VOLUME_PART_PER_THOUSAND;
    }
    return volume.microlitres() * FROM_HALF_PART_PER_THOUSAND;
  }

  /** Reading error as a percentage of the volume. */
  public double readingPercent() {
    return percent(readingNanolitres);
  }

  /** Barrel tolerance as a percentage of the volume. */
  public double tolerancePercent() {
    return percent(toleranceNanolitres);
  }

  /** Both together, as if they always went the same way: the worst case. */
  public double totalPercent() {
    return percent(totalNanolitres());
  }

  /** "14.5 percent": the worst case, rounded up to a tenth for a reader. */
  public String totalPercentWords() {
    return percentWords(totalNanolitres());
  }

  /** The reading error for a reader, rounded up to a tenth. */
  public String readingPercentWords() {
    return percentWords(readingNanolitres);
  }

  /** The barrel tolerance for a reader, rounded up to a tenth. */
  public String tolerancePercentWords() {
    return percentWords(toleranceNanolitres);
  }

  private String percentWords(long nanolitres) {
    return BigDecimal.valueOf(nanolitres * PERCENT)
            .divide(BigDecimal.valueOf(volume.microlitres() * NANOLITRES), 1, RoundingMode.CEILING)
            .stripTrailingZeros()
            .toPlainString()
        + " percent";
  }

  /** Whether the worst case is more than that part of the volume; exact. */
  public boolean isMoreThan(int limitPercent) {
    return totalNanolitres() * PERCENT > volume.microlitres() * NANOLITRES * limitPercent;
  }

  private long totalNanolitres() {
    return readingNanolitres + toleranceNanolitres;
  }

  private double percent(long nanolitres) {
    return (double) (nanolitres * PERCENT) / (volume.microlitres() * NANOLITRES);
  }
}
