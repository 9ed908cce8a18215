package rungwise.drawing;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import rungwise.drawing.chance.Band;
import rungwise.drawing.chance.ChanceCurves;
import rungwise.drawing.chance.ChanceMoves;
import rungwise.drawing.chance.Shares;
import rungwise.quantities.Volume;

/** Invented chances that rise with the volume. */
public final class Chances {

  public static final String CAVEAT = "Population invented version 1. An invention.";

  private Chances() {}

  private static Volume volume(long microlitres) {
    return Volume.ofMicrolitres(microlitres);
  }

  /** Curves to 0.8 mL, with the useful chance 1 in 1000 for each microlitre. */
  public static ChanceCurves curves(boolean isCrowded) {
    List<Volume> steps =
        isCrowded
            ? LongStream.rangeClosed(1, 16).mapToObj(i -> volume(50 * i)).toList()
            : List.of(volume(400));
    return new ChanceCurves(
        LongStream.rangeClosed(1, 8).mapToObj(i -> point(100 * i)).toList(),
        steps,
        isCrowded ? Optional.of(volume(750)) : Optional.empty(),
        isCrowded ? Optional.of(volume(800)) : Optional.of(volume(400)),
        volume(800),
        isCrowded ? Optional.of(volume(600)) : Optional.empty(),
        isCrowded
            ? List.of(
                new ChanceCurves.Past(volume(50), false, false),
                new ChanceCurves.Past(volume(400), true, false),
                new ChanceCurves.Past(volume(900), true, true))
            : List.of(),
        List.of("0.4 mL: usable 40 %."),
        CAVEAT);
  }

  private static ChanceCurves.Point point(long microlitres) {
    double useful = microlitres / 1000.0;
    return new ChanceCurves.Point(
        volume(microlitres),
        new Band(useful / 2, useful, (1 + useful) / 2),
        new Band(useful / 200, useful / 100, useful / 50));
  }

  /** As many moves. */
  public static ChanceMoves moves(int count) {
    return new ChanceMoves(
        volume(400),
        IntStream.range(0, count)
            .mapToObj(
                i ->
                    new ChanceMoves.Move(
                        i == 0 ? "before" : i + " Mar",
                        new Band(0.1, 0.2, 0.9),
                        new Band(0, 0.001, 0.02),
                        "after report " + i))
            .toList(),
        CAVEAT);
  }

  /**
   * As many shares: every third known only between two bounds, every fifth outside what was
   * expected, and the longest labels.
   */
  public static Shares shares(int count) {
    return new Shares(
        "useful responses",
        IntStream.range(0, count).mapToObj(Chances::share).toList(),
        List.of("Useful responses by volume."),
        CAVEAT);
  }

  private static Shares.Column share(int i) {
    double middle = (i + 1) / 20.0;
    double low = i % 5 == 1 ? middle + 0.1 : middle;
    return new Shares.Column(
        volume(50L * i) + " to " + volume(50L * i + 50),
        low,
        i % 3 == 2 ? low + 0.05 : low,
        new Band(middle - 0.05, middle, middle + 0.08),
        "Volume " + i + ".");
  }
}
