package rungwise.drawing.chance;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.drawing.Key;
import rungwise.drawing.Key.Entry;
import rungwise.drawing.LabelRows;
import rungwise.drawing.LabelRows.Label;
import rungwise.drawing.LabelRows.Placed;
import rungwise.drawing.Pen;
import rungwise.drawing.Sign;
import rungwise.drawing.SvgElement;

/**
 * The chances of one volume after each report, side by side: a dot for the chance, a stem for its
 * range, a usable response above and one that is too long below. The drawing is as wide as the
 * reports need and is meant to be shown at its own size; a page lets it scroll.
 */
public final class ChanceMovesDrawing {

  private static final double LEFT = 4;
  private static final double COLUMN = 22;
  private static final int FEWEST_COLUMNS = 12;
  private static final double AFTER = 64;

  private static final double HEADING = 16;
  private static final double TOP = 30;
  private static final double BOTTOM = 160;
  private static final double LOWER_HEADING = 190;
  private static final double LOWER_TOP = 206;
  private static final double LOWER_BOTTOM = 306;
  private static final double DATES = 330;
  private static final double DATE_ROW = 22;
  private static final double BELOW_DATES = 8;
  private static final double KEY_WIDTH = 330;
  private static final double DOT = 4;

  private final ChanceMoves moves;
  private final double right;
  private final Panel upper;
  private final Panel lower;
  private final List<Placed> dates;

  private ChanceMovesDrawing(ChanceMoves moves) {
    this.moves = moves;
    this.right = LEFT + Math.max(moves.moves().size(), FEWEST_COLUMNS) * COLUMN;
    this.upper = new Panel("usable response", LEFT, right, TOP, BOTTOM, 1, Panel.Side.RIGHT);
    double most = moves.moves().stream().mapToDouble(one -> one.tooLong().most()).max().orElse(1);
    this.lower =
        new Panel(
            "usable, and 2 h or longer",
            LEFT,
            right,
            LOWER_TOP,
            LOWER_BOTTOM,
            Panel.topFor(most),
            Panel.Side.RIGHT);
    this.dates = LabelRows.of(labels());
  }

  /** The drawing as one svg element, whose label says in words what it shows. */
  public static String svg(ChanceMoves moves) {
    return new ChanceMovesDrawing(moves).drawn().toString();
  }

  /** What the drawing shows, the newest first. */
  public static List<String> words(ChanceMoves moves) {
    return moves.moves().reversed().stream().map(ChanceMoves.Move::words).toList();
  }

  private SvgElement drawn() {
    double top = DATES + (LabelRows.count(dates) - 1) * DATE_ROW + BELOW_DATES;
    var key = new Key(right + AFTER - KEY_WIDTH, top, KEY_WIDTH);
    key.add(
        Entry.of(
            Sign.NONE,
            "What "
                + moves.volume()
                + " may do, as it was known after each report. Stem: its range by this model"
                + " for nine in ten such men."));
    key.add(Entry.of(Sign.NONE, moves.caveat()));
    return Pen.drawing(
        "drawing-moves",
        right + AFTER,
        key.bottom(),
        moves.caveat() + " Now: " + moves.moves().getLast().words(),
        Stream.of(
                upper.ruled(HEADING),
                lower.ruled(LOWER_HEADING),
                columns().flatMap(i -> mark(upper, "drawing-useful", ChanceMoves.Move::useful, i)),
                columns()
                    .flatMap(
                        i ->
                            mark(
                                lower,
                                "drawing-too-long drawing-danger",
                                ChanceMoves.Move::tooLong,
                                i)),
                dates.stream().map(this::date),
                key.parts().stream())
            .flatMap(parts -> parts));
  }

  private Stream<Integer> columns() {
    return IntStream.range(0, moves.moves().size()).boxed();
  }

  private double at(int index) {
    return right - (2 * (moves.moves().size() - 1 - index) + 1) * COLUMN / 2;
  }

  private Stream<SvgElement> mark(
      Panel panel, String className, Function<ChanceMoves.Move, Band> of, int index) {
    Band band = of.apply(moves.moves().get(index));
    double x = at(index);
    return Stream.of(
        Pen.quiet(Pen.line("drawing-range", x, panel.at(band.low()), x, panel.at(band.high()))),
        Pen.dot(className, x, panel.at(band.middle()), DOT));
  }

  /** The first and the last are always there, the others where there is room. */
  private List<Label> labels() {
    int last = moves.moves().size() - 1;
    var labels = new ArrayList<Label>();
    for (int i = last; i >= 0; i--) {
      String words = moves.moves().get(i).label();
      double half = Pen.widthOf(words) / 2;
      labels.add(new Label(Math.max(at(i), half), words, i == 0 || i == last));
    }
    return labels;
  }

  private SvgElement date(Placed placed) {
    return Pen.centred(
        "drawing-date",
        placed.label().x(),
        DATES + placed.row() * DATE_ROW,
        placed.label().words());
  }
}
