package rungwise.drawing;

import java.util.List;

/**
 * The signs that mean the same in every drawing. Each is told by its shape, and has its words in
 * the key below the drawing.
 */
public enum Sign {
  /** What is in force, or happened last: a filled arrow. */
  NOW,
  /** What is proposed to come next: the same arrow, hollow. */
  NEXT,
  /** What is never to be passed: a double line, the first of which is the limit. */
  LIMIT,
  /** What may not be used: hatched. */
  CLOSED,
  /** What has happened: a dot. */
  PAST,
  /** Happened in the clinic: a small hollow square. */
  CLINIC,
  /** Words that need no sign. */
  NONE;

  /** From the tip of an arrow to its base. */
  static final double ARROW = 18;

  private static final double ARROW_HALF = 7;
  private static final double DOT = 5;
  private static final double SQUARE_HALF = 4;

  /** From the line that is the limit to the second, which lies beyond it. */
  private static final double LIMIT_GAP = 5;

  /** The sign as it stands in the key, with its tip or foot at a point. */
  List<SvgElement> standingAt(double x, double y) {
    return switch (this) {
      case NOW -> List.of(now(x, y, 0, 1));
      case NEXT -> List.of(next(x, y, 0, 1));
      case LIMIT -> upright(x - LIMIT_GAP / 2, y - ARROW, y);
      case CLOSED -> Pen.hatch(x - ARROW_HALF, y - ARROW, 2 * ARROW_HALF, ARROW);
      case PAST -> List.of(past(x, y - ARROW / 2));
      case CLINIC -> List.of(clinic(x, y - ARROW / 2));
      case NONE -> List.of();
    };
  }

  /** An arrow whose tip is at a point and that points along a direction of length 1. */
  public static SvgElement now(double x, double y, double dx, double dy) {
    return arrow("drawing-now", x, y, dx, dy);
  }

  public static SvgElement next(double x, double y, double dx, double dy) {
    return Pen.open(arrow("drawing-next", x, y, dx, dy));
  }

  private static SvgElement arrow(String className, double x, double y, double dx, double dy) {
    double baseX = x - ARROW * dx;
    double baseY = y - ARROW * dy;
    return Pen.polygon(
        className,
        x,
        y,
        baseX + ARROW_HALF * dy,
        baseY - ARROW_HALF * dx,
        baseX - ARROW_HALF * dy,
        baseY + ARROW_HALF * dx);
  }

  /** A limit on a scale that grows to the right. */
  public static List<SvgElement> upright(double x, double top, double bottom) {
    return List.of(
        Pen.line("drawing-limit", x, top, x, bottom),
        Pen.line("drawing-beyond", x + LIMIT_GAP, top, x + LIMIT_GAP, bottom));
  }

  /** A limit on a scale that grows upwards. */
  static List<SvgElement> level(double y, double left, double right) {
    return List.of(
        Pen.line("drawing-limit", left, y, right, y),
        Pen.line("drawing-beyond", left, y - LIMIT_GAP, right, y - LIMIT_GAP));
  }

  static SvgElement past(double x, double y) {
    return Pen.dot("drawing-past", x, y, DOT);
  }

  static SvgElement clinic(double x, double y) {
    return Pen.open(
        Pen.box(
            "drawing-clinic", x - SQUARE_HALF, y - SQUARE_HALF, 2 * SQUARE_HALF, 2 * SQUARE_HALF));
  }
}
