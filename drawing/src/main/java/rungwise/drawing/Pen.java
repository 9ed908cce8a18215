package rungwise.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The strokes that the schedule, the time line and the injection clock share: one line weight, one
 * hatching, two sizes of text. Everything is drawn in the colour of the text around the drawing.
 */
public final class Pen {

  static final String INK = "currentColor";

  /** The weight of every line. */
  static final double LINE = 2;

  /** The size of all text, in units of the drawing. */
  public static final double TEXT = 17;

  /**
   * The widest that a letter is on average, as a part of the size of its text, in bold type. A text
   * is taken to be as wide as its letters at this width, so that it is rather left out than
   * covered.
   */
  private static final double LETTER = 0.56;

  /** Thin enough to stand back, and still 3 to 1 against the ground. */
  private static final double QUIET = 0.55;

  private static final double HATCH_EVERY = 8;

  private Pen() {}

  /** A whole drawing, which says in words what it shows. */
  public static SvgElement drawing(
      String className, double width, double height, String words, Stream<SvgElement> parts) {
    String right = SvgElement.number(width);
    String bottom = SvgElement.number(height);
    return SvgElement.of("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("class", "drawing " + className)
        .with("viewBox", "0 0 " + right + " " + bottom)
        .with("width", right)
        .with("height", bottom)
        .with("role", "img")
        .with("aria-label", words)
        .with("fill", INK)
        .holding(parts.toList());
  }

  public static double widthOf(String words) {
    return words.length() * LETTER * TEXT;
  }

  public static SvgElement text(String className, double x, double y, String words) {
    return anchored(className, x, y, "start", words);
  }

  public static SvgElement centred(String className, double x, double y, String words) {
    return anchored(className, x, y, "middle", words);
  }

  public static SvgElement anchored(
      String className, double x, double y, String anchor, String words) {
    return SvgElement.of("text")
        .with("class", className)
        .with("x", x)
        .with("y", y)
        .with("font-size", TEXT)
        .with("text-anchor", anchor)
        .saying(words);
  }

  public static SvgElement bold(SvgElement text) {
    return text.with("font-weight", "bold");
  }

  public static SvgElement line(String className, double x1, double y1, double x2, double y2) {
    return SvgElement.of("line")
        .with("class", className)
        .with("x1", x1)
        .with("y1", y1)
        .with("x2", x2)
        .with("y2", y2)
        .with("stroke", INK)
        .with("stroke-width", LINE);
  }

  public static SvgElement quiet(SvgElement stroke) {
    return stroke.with("stroke-opacity", QUIET);
  }

  public static SvgElement dot(String className, double x, double y, double radius) {
    return SvgElement.of("circle")
        .with("class", className)
        .with("cx", x)
        .with("cy", y)
        .with("r", radius);
  }

  public static SvgElement box(String className, double x, double y, double width, double height) {
    return SvgElement.of("rect")
        .with("class", className)
        .with("x", x)
        .with("y", y)
        .with("width", width)
        .with("height", height);
  }

  public static SvgElement polygon(String className, double... coordinates) {
    return SvgElement.of("polygon").with("class", className).with("points", points(coordinates));
  }

  public static SvgElement path(String className, double... coordinates) {
    return open(
        SvgElement.of("polyline").with("class", className).with("points", points(coordinates)));
  }

  private static String points(double... coordinates) {
    return Arrays.stream(coordinates).mapToObj(SvgElement::number).collect(Collectors.joining(" "));
  }

  /** The outline of a shape alone. */
  public static SvgElement open(SvgElement shape) {
    return shape.with("fill", "none").with("stroke", INK).with("stroke-width", LINE);
  }

  /** Slanted lines that fill a box and nothing outside it. */
  public static List<SvgElement> hatch(double x, double y, double width, double height) {
    var lines = new ArrayList<SvgElement>();
    double right = x + width;
    double bottom = y + height;
    for (double start = x - height + HATCH_EVERY; start < right; start += HATCH_EVERY) {
      double x1 = Math.max(start, x);
      double x2 = Math.min(start + height, right);
      lines.add(quiet(line("drawing-hatch", x1, bottom - (x1 - start), x2, bottom - (x2 - start))));
    }
    return lines;
  }
}
