package rungwise.drawing;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import rungwise.drawing.LabelRows.Label;
import rungwise.drawing.LabelRows.Placed;
import rungwise.quantities.Volume;

/**
 * A titration schedule as a ruled line, like the scale of a syringe, to scale in volume from zero
 * to the maximum.
 *
 * <p>A long line is a step, a short one only rules the scale. Arrows from above mark the dose in
 * force and the proposal, dots what was injected; what is closed is hatched and struck through; the
 * maximum is a double line. All of it is said again in sentences below, with mark and content.
 */
public final class ScheduleDrawing {

  private static final double WIDTH = 420;
  private static final double ZERO = 22;
  private static final double LENGTH = 360;

  private static final double UPPER_TIP = 42;
  private static final double LOWER_TIP = 62;
  private static final double ABOVE_ARROW = 5;
  private static final double STEP_TOP = 66;
  private static final double RULE = 100;
  private static final double SHORT_LINE = 10;
  private static final double LIMIT_TOP = 34;
  private static final double STRIKE_HALF = 6;
  private static final double STRIKE_MIDDLE = 80;

  private static final double PAST_MIDDLE = 110;
  private static final double NUMBER_BASE = 136;
  private static final double NUMBER_ROW = 22;
  private static final double BELOW_NUMBERS = 8;

  /** Nearer to each other than this, the two words above the line turn away from each other. */
  private static final double WORDS_APART = 52;

  /** Nearer to each other than this, the two arrows stand one above the other. */
  private static final double ARROWS_APART = 18;

  private static final double WORD_SIDE = 8;

  /** So many lines at most rule the scale. */
  private static final long MOST_LINES = 50;

  /** The distances, in microlitres, that may rule a scale. */
  private static final long[] GRADUATIONS = {5, 10, 20, 50, 100, 200, 500, 1_000, 10_000, 100_000};

  private final Schedule schedule;
  private final List<Placed> labels;

  private ScheduleDrawing(Schedule schedule) {
    this.schedule = schedule;
    this.labels = LabelRows.of(labels());
  }

  /** The drawing as one svg element, whose label says in words what it shows. */
  public static String svg(Schedule schedule) {
    return new ScheduleDrawing(schedule).drawn().toString();
  }

  /** The same without the sentences below it, to stand beside other drawings. */
  public static String small(Schedule schedule) {
    return new ScheduleDrawing(schedule).ruledOnly().toString();
  }

  /** What the drawing shows, as sentences. */
  public static String words(Schedule schedule) {
    return ScheduleWords.all(schedule);
  }

  private double bottom() {
    return NUMBER_BASE + (LabelRows.count(labels) - 1) * NUMBER_ROW + BELOW_NUMBERS;
  }

  private SvgElement drawn() {
    var key = new Key(0, bottom(), WIDTH);
    ScheduleWords.key(schedule).forEach(key::add);
    return Pen.drawing(
        "drawing-schedule",
        WIDTH,
        key.bottom(),
        words(schedule),
        Stream.concat(scale(), key.parts().stream()));
  }

  private SvgElement ruledOnly() {
    return Pen.drawing("drawing-schedule", WIDTH, bottom(), words(schedule), scale());
  }

  private Stream<SvgElement> scale() {
    return Stream.of(
            closed(),
            ruled(),
            schedule.steps().stream().flatMap(this::step),
            schedule.maximum().stream()
                .flatMap(volume -> Sign.upright(at(volume), LIMIT_TOP, RULE).stream()),
            marks(),
            labels.stream().map(this::number))
        .flatMap(parts -> parts);
  }

  /** Where a volume stands on the line. */
  private double at(Volume volume) {
    return ZERO + volume.ratioTo(schedule.end()) * LENGTH;
  }

  private Stream<SvgElement> ruled() {
    long end = schedule.end().microlitres();
    long every =
        LongStream.of(GRADUATIONS).filter(step -> end / step <= MOST_LINES).findFirst().orElse(end);
    Stream<SvgElement> lines =
        LongStream.rangeClosed(0, end / every)
            .mapToObj(i -> at(Volume.ofMicrolitres(i * every)))
            .map(x -> Pen.quiet(Pen.line("drawing-line", x, RULE - SHORT_LINE, x, RULE)));
    return Stream.concat(
        lines, Stream.of(Pen.line("drawing-rule", ZERO, RULE, ZERO + LENGTH, RULE)));
  }

  /** From the lowest closed step to the end of the line. */
  private Stream<SvgElement> closed() {
    return schedule.first(Schedule.State.CLOSED).map(step -> at(step.volume())).stream()
        .flatMap(x -> Pen.hatch(x, STEP_TOP, ZERO + LENGTH - x, RULE - STEP_TOP).stream());
  }

  private Stream<SvgElement> step(Schedule.Step step) {
    double x = at(step.volume());
    var line = Stream.of(Pen.line("drawing-step", x, STEP_TOP, x, RULE));
    var past = step.is(Schedule.State.PAST) ? Stream.of(Sign.past(x, PAST_MIDDLE)) : none();
    var struck = step.is(Schedule.State.CLOSED) ? struck(x) : none();
    return Stream.of(line, past, struck).flatMap(parts -> parts);
  }

  private static Stream<SvgElement> none() {
    return Stream.empty();
  }

  private static Stream<SvgElement> struck(double x) {
    double left = x - STRIKE_HALF;
    double right = x + STRIKE_HALF;
    double top = STRIKE_MIDDLE - STRIKE_HALF;
    double bottom = STRIKE_MIDDLE + STRIKE_HALF;
    return Stream.of(
        Pen.line("drawing-struck", left, top, right, bottom),
        Pen.line("drawing-struck", left, bottom, right, top));
  }

  private Stream<SvgElement> marks() {
    Optional<Double> now = schedule.first(Schedule.State.NOW).map(step -> at(step.volume()));
    Optional<Double> next = schedule.first(Schedule.State.PROPOSED).map(step -> at(step.volume()));
    boolean isCrowded = isNearer(now, next, ARROWS_APART);
    return Stream.of(
            now.stream().map(x -> Sign.now(x, LOWER_TIP, 0, 1)),
            next.stream().map(x -> Sign.next(x, isCrowded ? UPPER_TIP : LOWER_TIP, 0, 1)),
            markWords(now, next, (isCrowded ? UPPER_TIP : LOWER_TIP) - Sign.ARROW - ABOVE_ARROW))
        .flatMap(parts -> parts);
  }

  private static boolean isNearer(Optional<Double> one, Optional<Double> other, double limit) {
    return one.isPresent() && other.isPresent() && Math.abs(one.get() - other.get()) < limit;
  }

  private static Stream<SvgElement> markWords(
      Optional<Double> now, Optional<Double> next, double base) {
    if (now.isPresent() && now.equals(next)) {
      return now.stream().map(x -> word(x, base, "now and next", x > WIDTH / 2 ? -1 : 1));
    }
    int turn = 0;
    if (isNearer(now, next, WORDS_APART)) {
      turn = now.orElseThrow() < next.orElseThrow() ? -1 : 1;
    }
    int turned = turn;
    return Stream.concat(
        now.stream().map(x -> word(x, base, "now", turned)),
        next.stream().map(x -> word(x, base, "next", -turned)));
  }

  /** A word above its arrow, or turned away to the left (-1) or the right (1). */
  private static SvgElement word(double x, double base, String word, int turn) {
    String anchor =
        switch (turn) {
          case -1 -> "end";
          case 1 -> "start";
          default -> "middle";
        };
    return Pen.bold(Pen.anchored("drawing-word", x - turn * WORD_SIDE, base, anchor, word));
  }

  private List<Label> labels() {
    Optional<Schedule.Step> boundary = schedule.first(Schedule.State.CLOSED);
    Stream<Label> steps =
        schedule.steps().stream()
            .filter(step -> schedule.maximum().filter(step.volume()::equals).isEmpty())
            .map(step -> label(step.volume(), isKept(step) || boundary.equals(Optional.of(step))));
    Stream<Label> maximum = schedule.maximum().stream().map(volume -> label(volume, true));
    Stream<Label> zero = Stream.of(label(Volume.ZERO, false));
    return Stream.of(maximum, steps, zero).flatMap(labels -> labels).toList();
  }

  /** A number stands in the middle below its line, or as near to that as the frame allows. */
  private Label label(Volume volume, boolean isKept) {
    String words = volume.toString();
    double half = Pen.widthOf(words) / 2;
    return new Label(Math.clamp(at(volume), half, WIDTH - half), words, isKept);
  }

  private static boolean isKept(Schedule.Step step) {
    return step.is(Schedule.State.NOW) || step.is(Schedule.State.PROPOSED);
  }

  private SvgElement number(Placed placed) {
    Label label = placed.label();
    return Pen.centred(
        "drawing-number", label.x(), NUMBER_BASE + placed.row() * NUMBER_ROW, label.words());
  }
}
