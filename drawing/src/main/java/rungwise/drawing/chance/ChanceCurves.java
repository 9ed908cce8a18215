package rungwise.drawing.chance;

import java.util.List;
import java.util.Optional;
import rungwise.quantities.Volume;

/**
 * What each volume may do, as it is to be drawn.
 *
 * @param points strictly rising, at least two, none above the maximum
 * @param steps of the schedule, rising
 * @param now the dose in force
 * @param next the proposal, which nobody has signed
 * @param closedFrom from where on a safety check forbids every step
 * @param past what was injected, in any order
 * @param words what the drawing shows, in a sentence or two for each step
 * @param caveat what the chances rest on
 */
public record ChanceCurves(
    List<Point> points,
    List<Volume> steps,
    Optional<Volume> now,
    Optional<Volume> next,
    Volume maximum,
    Optional<Volume> closedFrom,
    List<Past> past,
    List<String> words,
    String caveat) {

  /**
   * The chances of one volume.
   *
   * @param useful of a usable response
   * @param tooLong of one that is too long
   */
  public record Point(Volume volume, Band useful, Band tooLong) {}

  /**
   * One injection that happened.
   *
   * @param isUseful whether it was usable
   * @param isTooLong whether it was, or may have been, too long
   */
  public record Past(Volume drawn, boolean isUseful, boolean isTooLong) {}

  public ChanceCurves {
    points = List.copyOf(points);
    steps = List.copyOf(steps);
    past = List.copyOf(past);
    words = List.copyOf(words);
    if (points.size() < 2 || points.getLast().volume().isMoreThan(maximum)) {
      throw new IllegalArgumentException("bug: curves over " + points.size() + " volumes");
    }
    for (int i = 1; i < points.size(); i++) {
      if (!points.get(i).volume().isMoreThan(points.get(i - 1).volume())) {
        throw new IllegalArgumentException("bug: curves turn back at " + points.get(i).volume());
      }
    }
  }
}
