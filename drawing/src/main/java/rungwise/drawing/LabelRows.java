package rungwise.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * Labels along a line, none of which covers another. Those that matter are all kept, in further
 * rows where they would collide; of the others only those stay that fit into the first row.
 */
public final class LabelRows {

  /**
   * A text whose middle stands at a place.
   *
   * @param isKept whether it must not be left out
   */
  public record Label(double x, String words, boolean isKept) {
    private boolean isClearOf(Label other) {
      double reach = (Pen.widthOf(words) + Pen.widthOf(other.words)) / 2 + GAP;
      return Math.abs(x - other.x) >= reach;
    }
  }

  /**
   * A label that stays.
   *
   * @param row 0 or more, counted away from the line
   */
  public record Placed(Label label, int row) {}

  private static final double GAP = 6;

  private final List<Placed> placed = new ArrayList<>();

  private LabelRows() {}

  /** The labels that stay, those that matter first. Among equals the earlier one goes first. */
  public static List<Placed> of(List<Label> labels) {
    var rows = new LabelRows();
    labels.stream().filter(Label::isKept).forEach(rows::keep);
    labels.stream()
        .filter(label -> !label.isKept())
        .filter(label -> rows.isFree(0, label))
        .forEach(label -> rows.placed.add(new Placed(label, 0)));
    return List.copyOf(rows.placed);
  }

  /** How many rows they take, 1 at least. */
  public static int count(List<Placed> placed) {
    return 1 + placed.stream().mapToInt(Placed::row).max().orElse(0);
  }

  private void keep(Label label) {
    int row = 0;
    while (!isFree(row, label)) {
      row++;
    }
    placed.add(new Placed(label, row));
  }

  private boolean isFree(int row, Label label) {
    return placed.stream()
        .filter(other -> other.row() == row)
        .allMatch(other -> label.isClearOf(other.label()));
  }
}
