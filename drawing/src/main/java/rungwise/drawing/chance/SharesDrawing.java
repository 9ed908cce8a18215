package rungwise.drawing.chance;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.drawing.Key;
import rungwise.drawing.Key.Entry;
import rungwise.drawing.Pen;
import rungwise.drawing.Sign;
import rungwise.drawing.SvgElement;

/**
 * Shares that were reported beside those that were expected, column by column: a dot for what was
 * reported, or a bar where only two bounds are known, and a stem for what was expected, with a
 * short line at its mean. Above a column that lies outside stands "!". The drawing is as wide as
 * its labels need and is meant to be shown at its own size; a page lets it scroll.
 */
public final class SharesDrawing {

  private static final double LEFT = 64;
  private static final double NARROWEST = 44;
  private static final double BETWEEN = 14;
  private static final double AFTER = 8;

  private static final double HEADING = 16;
  private static final double ALARM = 42;
  private static final double TOP = 54;
  private static final double BOTTOM = 204;
  private static final double LABELS = 230;
  private static final double LABEL_LINE = 22;
  private static final double BELOW_LABELS = 8;

  /** A longer label is broken where it can be. */
  private static final int LETTERS_OF_LABEL = 10;

  private static final double KEY_WIDTH = 372;
  private static final double DOT = 4;
  private static final double HALF_MEAN = 8;

  private final Shares shares;
  private final double column;
  private final double right;
  private final Panel panel;

  private SharesDrawing(Shares shares) {
    this.shares = shares;
    double widest =
        shares.columns().stream()
            .flatMap(one -> lines(one).stream())
            .mapToDouble(Pen::widthOf)
            .max()
            .orElse(0);
    this.column = Math.max(NARROWEST, widest + BETWEEN);
    this.right = LEFT + shares.columns().size() * column;
    double most =
        shares.columns().stream()
            .mapToDouble(one -> Math.max(one.high(), one.expected().most()))
            .max()
            .orElse(1);
    this.panel =
        new Panel(shares.heading(), LEFT, right, TOP, BOTTOM, Panel.topFor(most), Panel.Side.LEFT);
  }

  /** The drawing as one svg element, whose label says in words what it shows. */
  public static String svg(Shares shares) {
    return new SharesDrawing(shares).drawn().toString();
  }

  /** What the drawing shows, as sentences. */
  public static List<String> words(Shares shares) {
    return Stream.of(
            Stream.of(shares.caveat()),
            shares.words().stream(),
            shares.columns().stream().map(Shares.Column::words),
            Stream.of(outside(shares)))
        .flatMap(words -> words)
        .toList();
  }

  private static String outside(Shares shares) {
    String labels =
        shares.columns().stream()
            .filter(Shares.Column::isOutside)
            .map(Shares.Column::label)
            .collect(Collectors.joining(", "));
    return labels.isEmpty()
        ? "None lies outside what was expected."
        : "Outside what was expected, as one in ten is by chance: " + labels + ".";
  }

  private SvgElement drawn() {
    int lines = shares.columns().stream().mapToInt(one -> lines(one).size()).max().orElse(1);
    var key = new Key(0, LABELS + (lines - 1) * LABEL_LINE + BELOW_LABELS, KEY_WIDTH);
    key().forEach(key::add);
    double width = Math.max(Math.max(right + AFTER, KEY_WIDTH), Pen.widthOf(shares.heading()));
    return Pen.drawing(
        "drawing-shares",
        width,
        key.bottom(),
        String.join(" ", words(shares)),
        Stream.of(
                panel.ruled(HEADING),
                IntStream.range(0, shares.columns().size()).boxed().flatMap(this::column),
                key.parts().stream())
            .flatMap(parts -> parts));
  }

  private Stream<SvgElement> column(int index) {
    Shares.Column one = shares.columns().get(index);
    double x = LEFT + (index + 1) * column - column / 2;
    double mean = panel.at(one.expected().middle());
    Stream<SvgElement> marks =
        Stream.of(
            Pen.quiet(
                Pen.line(
                    "drawing-range",
                    x,
                    panel.at(one.expected().low()),
                    x,
                    panel.at(one.expected().high()))),
            Pen.quiet(Pen.line("drawing-mean", x - HALF_MEAN, mean, x + HALF_MEAN, mean)),
            reported(x, one));
    Stream<SvgElement> all = Stream.concat(marks, label(x, one));
    return one.isOutside()
        ? Stream.concat(all, Stream.of(Pen.bold(Pen.centred("drawing-outside", x, ALARM, "!"))))
        : all;
  }

  private static List<String> lines(Shares.Column one) {
    return Key.broken(one.label(), LETTERS_OF_LABEL);
  }

  private static Stream<SvgElement> label(double x, Shares.Column one) {
    List<String> lines = lines(one);
    return IntStream.range(0, lines.size())
        .mapToObj(i -> Pen.centred("drawing-label", x, LABELS + i * LABEL_LINE, lines.get(i)));
  }

  /** A dot, or a bar between two bounds, as wide as the dot and never lower than half of it. */
  private SvgElement reported(double x, Shares.Column one) {
    double top = panel.at(one.high());
    if (one.low() == one.high()) {
      return Pen.dot("drawing-reported", x, top, DOT);
    }
    double height = panel.at(one.low()) - top;
    double seen = Math.max(DOT, height);
    return Pen.box("drawing-reported", x - DOT, top - (seen - height) / 2, 2 * DOT, seen);
  }

  private Stream<Entry> key() {
    boolean hasBar = shares.columns().stream().anyMatch(one -> one.low() < one.high());
    return Stream.of(
            Stream.of(
                "Dot: reported."
                    + (hasBar
                        ? " Bar: reported between these, as what is known leaves it open."
                        : ""),
                "Stem: expected between these in nine of ten such clinics. Short line: the mean."),
            shares.columns().stream().anyMatch(Shares.Column::isOutside)
                ? Stream.of("!: " + outside(shares))
                : Stream.of(outside(shares)),
            Stream.of(shares.caveat()))
        .flatMap(words -> words)
        .map(words -> Entry.of(Sign.NONE, words));
  }
}
