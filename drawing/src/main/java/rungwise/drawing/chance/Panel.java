package rungwise.drawing.chance;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.drawing.Pen;
import rungwise.drawing.SvgElement;

/**
 * A ruled area for one kind of chance: heading, lines at nothing, half and top, and their words.
 *
 * @param heading what the chance is of
 * @param left where the lines begin
 * @param right where they end
 * @param top where the largest chance stands
 * @param bottom where no chance stands
 * @param largest the chance at the top, more than 0
 * @param side on which its words stand
 */
record Panel(
    String heading,
    double left,
    double right,
    double top,
    double bottom,
    double largest,
    Side side) {

  /** Where the words of a panel stand: a drawing that scrolls opens at its right end. */
  enum Side {
    LEFT,
    RIGHT
  }

  private static final double[] TOPS = {0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1};
  private static final double PERCENT = 100;
  private static final double BESIDE = 8;
  private static final double TEXT_BELOW_MIDDLE = 6;

  /** The smallest round number that is not below a chance. */
  static double topFor(double chance) {
    for (double top : TOPS) {
      if (chance <= top) {
        return top;
      }
    }
    return 1;
  }

  double at(double chance) {
    return bottom - (bottom - top) * Math.min(chance, largest) / largest;
  }

  Stream<SvgElement> ruled(double headingBase) {
    SvgElement words =
        side == Side.LEFT
            ? Pen.text("drawing-heading", 0, headingBase, heading)
            : Pen.anchored("drawing-heading", right, headingBase, "end", heading);
    return Stream.concat(
        Stream.of(Pen.bold(words)), Stream.of(0.0, largest / 2, largest).flatMap(this::rule));
  }

  private Stream<SvgElement> rule(double chance) {
    double y = at(chance);
    SvgElement line = Pen.line("drawing-chance-line", left, y, right, y);
    double base = y + TEXT_BELOW_MIDDLE;
    return Stream.of(
        chance == 0 ? line : Pen.quiet(line),
        side == Side.LEFT
            ? Pen.anchored("drawing-number", left - BESIDE, base, "end", percent(chance))
            : Pen.text("drawing-number", right + BESIDE, base, percent(chance)));
  }

  private static String percent(double chance) {
    double number = chance * PERCENT;
    boolean isWhole = number == Math.rint(number);
    return (isWhole ? Long.toString((long) number) : Double.toString(number)) + " %";
  }

  /** The curve of the means and, standing back, those of both ends. */
  Stream<SvgElement> curves(String className, double[] x, List<Band> bands) {
    return Stream.of(
        Pen.quiet(curve("drawing-range", x, bands, Band::low)),
        Pen.quiet(curve("drawing-range", x, bands, Band::high)),
        curve(className, x, bands, Band::middle));
  }

  private SvgElement curve(
      String className, double[] x, List<Band> bands, ToDoubleFunction<Band> of) {
    double[] corners =
        IntStream.range(0, x.length)
            .boxed()
            .flatMapToDouble(i -> DoubleStream.of(x[i], at(of.applyAsDouble(bands.get(i)))))
            .toArray();
    return Pen.path(className, corners);
  }
}
