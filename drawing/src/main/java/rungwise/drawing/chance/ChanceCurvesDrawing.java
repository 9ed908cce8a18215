package rungwise.drawing.chance;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.drawing.Key;
import rungwise.drawing.Key.Entry;
import rungwise.drawing.LabelRows;
import rungwise.drawing.LabelRows.Label;
import rungwise.drawing.LabelRows.Placed;
import rungwise.drawing.Pen;
import rungwise.drawing.Sign;
import rungwise.drawing.SvgElement;
import rungwise.quantities.Volume;

/**
 * Two curves over the volume, one above the other: the chance of a usable response and that of one
 * that is too long, each with its range, on one scale of volumes from zero to the maximum.
 *
 * <p>Between them stand the injections that happened. Steps are short lines at the foot of each
 * curve; arrows, hatching and the double line mean what they mean in the schedule.
 */
public final class ChanceCurvesDrawing {

  private static final double WIDTH = 420;
  private static final double LEFT = 64;
  private static final double RIGHT = 380;

  private static final double HEADING = 16;
  private static final double WORD = 40;
  private static final double TIP = 62;
  private static final double TOP = 66;
  private static final double BOTTOM = 196;
  private static final double USEFUL_ROW = 214;
  private static final double POOR_ROW = 230;
  private static final double LONG_ROW = 248;
  private static final double LOWER_HEADING = 282;
  private static final double LOWER_TOP = 298;
  private static final double LOWER_BOTTOM = 398;
  private static final double NUMBERS = 422;
  private static final double NUMBER_ROW = 22;
  private static final double BELOW_NUMBERS = 8;
  private static final double STEP = 10;
  private static final double HALF = 5;
  private static final double WORD_SIDE = 8;
  private static final double WORDS_APART = 52;

  private final ChanceCurves curves;
  private final Panel upper;
  private final Panel lower;
  private final List<Placed> numbers;

  private ChanceCurvesDrawing(ChanceCurves curves) {
    this.curves = curves;
    this.upper = new Panel("usable response", LEFT, RIGHT, TOP, BOTTOM, 1, Panel.Side.LEFT);
    double most =
        curves.points().stream().mapToDouble(point -> point.tooLong().most()).max().orElse(1);
    this.lower =
        new Panel(
            "usable, and 2 h or longer",
            LEFT,
            RIGHT,
            LOWER_TOP,
            LOWER_BOTTOM,
            Panel.topFor(most),
            Panel.Side.LEFT);
    this.numbers = LabelRows.of(labels());
  }

  /** The drawing as one svg element, whose label says in words what it shows. */
  public static String svg(ChanceCurves curves) {
    return new ChanceCurvesDrawing(curves).drawn().toString();
  }

  /** What the drawing shows, as sentences. */
  public static List<String> words(ChanceCurves curves) {
    return Stream.of(Stream.of(curves.caveat()), curves.words().stream(), past(curves))
        .flatMap(words -> words)
        .toList();
  }

  private static Stream<String> past(ChanceCurves curves) {
    long useful = curves.past().stream().filter(ChanceCurves.Past::isUseful).count();
    long tooLong = curves.past().stream().filter(ChanceCurves.Past::isTooLong).count();
    return Stream.of(
        "Injections of this preparation: "
            + curves.past().size()
            + ", usable: "
            + useful
            + ", 2 h or longer, known or possible: "
            + tooLong
            + ".");
  }

  private SvgElement drawn() {
    double top = NUMBERS + (LabelRows.count(numbers) - 1) * NUMBER_ROW + BELOW_NUMBERS;
    var key = new Key(0, top, WIDTH);
    key().forEach(key::add);
    return Pen.drawing(
        "drawing-chance",
        WIDTH,
        key.bottom(),
        String.join(" ", words(curves)),
        Stream.of(
                closed(),
                upper.ruled(HEADING),
                lower.ruled(LOWER_HEADING),
                curves.steps().stream().flatMap(this::step),
                lines(),
                Sign.upright(at(curves.maximum()), TOP, LOWER_BOTTOM).stream(),
                curves.past().stream().distinct().flatMap(this::injection),
                arrows(),
                numbers.stream().map(this::number),
                key.parts().stream())
            .flatMap(parts -> parts));
  }

  private double at(Volume volume) {
    return LEFT + volume.ratioTo(curves.maximum()) * (RIGHT - LEFT - STEP);
  }

  private Stream<SvgElement> lines() {
    double[] x = curves.points().stream().mapToDouble(point -> at(point.volume())).toArray();
    return Stream.concat(
        upper.curves(
            "drawing-useful", x, curves.points().stream().map(ChanceCurves.Point::useful).toList()),
        lower.curves(
            "drawing-too-long drawing-danger",
            x,
            curves.points().stream().map(ChanceCurves.Point::tooLong).toList()));
  }

  private Stream<SvgElement> closed() {
    return curves.closedFrom().map(this::at).stream()
        .flatMap(
            x ->
                Stream.concat(
                    Pen.hatch(x, TOP, at(curves.maximum()) - x, BOTTOM - TOP).stream(),
                    Pen.hatch(x, LOWER_TOP, at(curves.maximum()) - x, LOWER_BOTTOM - LOWER_TOP)
                        .stream()));
  }

  private Stream<SvgElement> step(Volume volume) {
    double x = at(volume);
    return Stream.of(
        Pen.line("drawing-step", x, BOTTOM - STEP, x, BOTTOM),
        Pen.line("drawing-step", x, LOWER_BOTTOM - STEP, x, LOWER_BOTTOM));
  }

  /** A filled square where it was usable, a hollow circle where not, and "!" where too long. */
  private Stream<SvgElement> injection(ChanceCurves.Past past) {
    double x = Math.min(at(past.drawn()), at(curves.maximum()));
    SvgElement sign =
        past.isUseful()
            ? Pen.box("drawing-grade", x - HALF, USEFUL_ROW - HALF, 2 * HALF, 2 * HALF)
            : Pen.open(Pen.dot("drawing-grade", x, POOR_ROW, HALF));
    return past.isTooLong()
        ? Stream.of(
            sign, Pen.bold(Pen.centred("drawing-alarm drawing-danger", x, LONG_ROW + HALF, "!")))
        : Stream.of(sign);
  }

  private Stream<SvgElement> arrows() {
    Optional<Double> now = curves.now().map(this::at);
    Optional<Double> next = curves.next().filter(other -> !isNow(other)).map(this::at);
    boolean isClose =
        now.isPresent() && next.isPresent() && Math.abs(now.get() - next.get()) < WORDS_APART;
    int side = isClose ? (next.orElseThrow() > now.orElseThrow() ? -1 : 1) : 0;
    return Stream.concat(
        now.stream()
            .flatMap(
                x ->
                    Stream.concat(
                        guides(x), Stream.of(Sign.now(x, TIP, 0, 1), word(x, "now", side)))),
        next.stream()
            .flatMap(
                x ->
                    Stream.concat(
                        guides(x), Stream.of(Sign.next(x, TIP, 0, 1), word(x, "next", -side)))));
  }

  private boolean isNow(Volume volume) {
    return curves.now().equals(Optional.of(volume));
  }

  private static Stream<SvgElement> guides(double x) {
    return Stream.of(
        Pen.quiet(Pen.line("drawing-guide", x, TOP, x, BOTTOM)),
        Pen.quiet(Pen.line("drawing-guide", x, LOWER_TOP, x, LOWER_BOTTOM)));
  }

  private static SvgElement word(double x, String word, int side) {
    String anchor = side == 0 ? "middle" : side < 0 ? "end" : "start";
    return Pen.bold(Pen.anchored("drawing-word", x + side * WORD_SIDE, WORD, anchor, word));
  }

  private List<Label> labels() {
    return Stream.of(
            Stream.of(label(curves.maximum(), true)),
            curves.now().stream().map(volume -> label(volume, true)),
            curves.next().filter(volume -> !isNow(volume)).stream().map(one -> label(one, true)),
            curves.steps().stream()
                .filter(volume -> !isNow(volume) && !curves.next().equals(Optional.of(volume)))
                .filter(volume -> !volume.equals(curves.maximum()))
                .map(volume -> label(volume, false)),
            Stream.of(label(Volume.ZERO, false)))
        .flatMap(labels -> labels)
        .toList();
  }

  private Label label(Volume volume, boolean isKept) {
    String words = volume.toString();
    double half = Pen.widthOf(words) / 2;
    return new Label(Math.clamp(at(volume), half, WIDTH - half), words, isKept);
  }

  private SvgElement number(Placed placed) {
    return Pen.centred(
        "drawing-number",
        placed.label().x(),
        NUMBERS + placed.row() * NUMBER_ROW,
        placed.label().words());
  }

  private Stream<Entry> key() {
    return Stream.of(
            curves.now().map(volume -> Entry.of(Sign.NOW, "Now: " + volume)),
            curves.next().map(volume -> Entry.of(Sign.NEXT, "Next, if signed: " + volume)),
            curves.closedFrom().map(from -> Entry.of(Sign.CLOSED, "Closed from " + from + " on")),
            Optional.of(Entry.of(Sign.LIMIT, "Maximum: " + curves.maximum())),
            Optional.of(
                Entry.of(
                    Sign.NONE,
                    "Full line: the chance. Pale lines: its range by this model for nine in ten"
                        + " such men.")),
            past(),
            Optional.of(Entry.of(Sign.NONE, curves.caveat())))
        .flatMap(Optional::stream);
  }

  private Optional<Entry> past() {
    return curves.past().isEmpty()
        ? Optional.empty()
        : Optional.of(
            Entry.of(
                Sign.NONE,
                "Injected before: filled square usable, hollow circle not, ! 2 h or longer, known"
                    + " or possible."));
  }
}
