package rungwise.drawing.chance;

import java.util.List;
import rungwise.quantities.Volume;

/**
 * How the chances of one volume moved from report to report, as it is to be drawn.
 *
 * @param volume the one volume
 * @param moves oldest first, at least one
 * @param caveat what the chances rest on
 */
public record ChanceMoves(Volume volume, List<Move> moves, String caveat) {

  /**
   * What was known after a report.
   *
   * @param label below it: a day, or "before"
   * @param words the same in a sentence
   */
  public record Move(String label, Band useful, Band tooLong, String words) {}

  public ChanceMoves {
    moves = List.copyOf(moves);
    if (moves.isEmpty()) {
      throw new IllegalArgumentException("bug: nothing moved");
    }
  }
}
