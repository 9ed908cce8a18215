package rungwise.drawing;

import java.util.List;
import java.util.stream.Stream;
import rungwise.quantities.TimeSpan;

/**
 * The upper part of a time line: how long each erection lasted.
 *
 * <p>The scale has four parts of the same height: to 1 hour, to 2, to 4, to 8. Inside each part it
 * is even. What lasted longer than that ends at the top with an arrow, as does what has no known
 * end.
 *
 * @param bottom where no time stands
 * @param left where the ruled lines begin
 * @param right where they end
 * @param part how high each part of the scale is
 */
record DurationStrip(double bottom, double left, double right, double part) {

  /** How high a part is where there is room. */
  static final double PART = 44;

  /** How high it is in a drawing that stands beside others. */
  static final double SMALL_PART = 28;

  private static final TimeSpan FIRST_PART = TimeSpan.ofHours(1);
  private static final TimeSpan TWO_HOURS = TimeSpan.ofHours(2);
  private static final TimeSpan TOP = TimeSpan.ofHours(8);
  private static final int PARTS = 4;

  /** How high a whole scale is. */
  static double height(double part) {
    return PARTS * part;
  }

  private static final double DOT = 4;
  private static final double BOX_HALF = 5;
  private static final double BAR_HALF = 7;
  private static final double HEAD_HALF = 6;
  private static final double HEAD = 9;
  private static final double LOUD_HEAD_HALF = 11;
  private static final double LOUD_HEAD = 18;
  private static final double BESIDE = 8;
  private static final double TEXT_BELOW_MIDDLE = 6;
  private static final double HEADING = 24;
  private static final double ABOVE_MARK = 8;

  /** Where a time stands; times beyond the top of the scale stand at its top. */
  double at(TimeSpan time) {
    if (!time.isMoreThan(FIRST_PART)) {
      return bottom - part * time.ratioTo(FIRST_PART);
    }
    TimeSpan from = FIRST_PART;
    for (int below = 1; below < PARTS; below++) {
      double beyond = time.ratioTo(from) - 1;
      if (beyond <= 1) {
        return bottom - part * (below + beyond);
      }
      from = new TimeSpan(2 * from.milliseconds());
    }
    return top();
  }

  private double top() {
    return bottom - height(part);
  }

  /** The lines at 1, 2 and 4 hours, the last of which is the limit, and the hatching beyond it. */
  Stream<SvgElement> ruled() {
    double limit = at(TimeLine.EMERGENCY);
    Stream<SvgElement> hours =
        Stream.of(FIRST_PART, TWO_HOURS)
            .map(this::at)
            .map(y -> Pen.quiet(Pen.line("drawing-hour", left, y, right, y)));
    Stream<SvgElement> words =
        Stream.of(
            word(top(), "drawing-number", TOP + " or more"),
            Pen.bold(word(limit, "drawing-number drawing-danger", "4 h: emergency")),
            word(at(TWO_HOURS), "drawing-number", TWO_HOURS.toString()),
            word(at(FIRST_PART), "drawing-number", FIRST_PART.toString()),
            Pen.bold(word(top() - HEADING, "drawing-heading", "until soft")),
            word(bottom, "drawing-number", "0"));
    return Stream.of(
            Pen.hatch(left, top(), right - left, limit - top()).stream(),
            hours,
            Stream.of(Pen.line("drawing-rule", left, bottom, right, bottom)),
            Sign.level(limit, left, right).stream(),
            words)
        .flatMap(parts -> parts);
  }

  private SvgElement word(double y, String className, String words) {
    return Pen.text(className, right + BESIDE, y + TEXT_BELOW_MIDDLE, words);
  }

  /** One erection; an emergency is a filled column in the colour of danger, under its own "!". */
  Stream<SvgElement> mark(TimeLine.Point point, double x) {
    if (!point.isEmergency()) {
      return calm(point.softAfter(), x);
    }
    String className = "drawing-long drawing-danger";
    boolean isOpen = isOpen(point.softAfter());
    double end = Math.min(end(point.softAfter()), at(TimeLine.EMERGENCY));
    double barEnd = isOpen ? end + LOUD_HEAD : end;
    SvgElement alarm =
        Pen.bold(Pen.centred("drawing-alarm drawing-danger", x, top() - ABOVE_MARK, "!"));
    SvgElement bar = Pen.box(className, x - BAR_HALF, barEnd, 2 * BAR_HALF, bottom - barEnd);
    Stream<SvgElement> head =
        isOpen
            ? Stream.of(head("drawing-open-end drawing-danger", x, end, LOUD_HEAD_HALF, LOUD_HEAD))
            : Stream.empty();
    return Stream.concat(Stream.of(bar, alarm), head);
  }

  /** How far up the filled column of an emergency goes: as far as it may have lasted. */
  private double end(TimeLine.SoftAfter softAfter) {
    return switch (softAfter) {
      case TimeLine.SoftAfter.Exactly exactly -> at(exactly.duration());
      case TimeLine.SoftAfter.Between between -> at(between.before());
      case TimeLine.SoftAfter.AtLeast atLeast -> top();
      case TimeLine.SoftAfter.NotKnown notKnown -> top();
    };
  }

  private static boolean isOpen(TimeLine.SoftAfter softAfter) {
    return switch (softAfter) {
      case TimeLine.SoftAfter.Exactly exactly -> exactly.duration().isMoreThan(TOP);
      case TimeLine.SoftAfter.Between between -> between.before().isMoreThan(TOP);
      case TimeLine.SoftAfter.AtLeast atLeast -> true;
      case TimeLine.SoftAfter.NotKnown notKnown -> true;
    };
  }

  private Stream<SvgElement> calm(TimeLine.SoftAfter softAfter, double x) {
    return switch (softAfter) {
      case TimeLine.SoftAfter.Exactly exactly -> exactly(exactly.duration(), x).stream();
      case TimeLine.SoftAfter.AtLeast atLeast ->
          Stream.of(
              Pen.line("drawing-at-least", x, bottom, x, at(atLeast.duration())),
              Pen.line("drawing-open-end", x, at(atLeast.duration()), x, top()),
              Pen.line(
                  "drawing-seen",
                  x - BOX_HALF,
                  at(atLeast.duration()),
                  x + BOX_HALF,
                  at(atLeast.duration())),
              head("drawing-open-end", x, top(), HEAD_HALF, HEAD));
      case TimeLine.SoftAfter.Between between ->
          Stream.of(
              Pen.open(
                  Pen.box(
                      "drawing-between",
                      x - BOX_HALF,
                      at(between.before()),
                      2 * BOX_HALF,
                      at(between.from()) - at(between.before()))));
      case TimeLine.SoftAfter.NotKnown notKnown ->
          Stream.of(
              Pen.open(Pen.dot("drawing-not-known", x, bottom, DOT)),
              Pen.centred("drawing-question", x, bottom - 2 * ABOVE_MARK, "?"));
    };
  }

  /** From two hours on a column, below it a dot on a stem. */
  private List<SvgElement> exactly(TimeSpan duration, double x) {
    double y = at(duration);
    if (duration.isLessThan(TWO_HOURS)) {
      return List.of(
          Pen.quiet(Pen.line("drawing-stem", x, bottom, x, y)), Pen.dot("drawing-soft", x, y, DOT));
    }
    return List.of(Pen.box("drawing-soft", x - BOX_HALF, y, 2 * BOX_HALF, bottom - y));
  }

  private static SvgElement head(String className, double x, double y, double half, double height) {
    return Pen.polygon(className, x, y, x + half, y + height, x - half, y + height);
  }
}
