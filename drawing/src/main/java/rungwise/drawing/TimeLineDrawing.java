package rungwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.drawing.LabelRows.Label;
import rungwise.drawing.LabelRows.Placed;
import rungwise.quantities.Volume;

/**
 * The newest injections side by side, the last one at the right beside the words for the lines: how
 * long each erection lasted, how firm it was, and the volume that was drawn.
 *
 * <p>The loudest thing is what lasted, or may have lasted, four hours. The drawing is as wide as
 * the injections need and is meant to be shown at its own size; a page lets it scroll. Beside other
 * drawings a small one shows the newest alone, how long each lasted and whether it was usable.
 */
public final class TimeLineDrawing {

  private static final double LEFT = 10;
  private static final double COLUMN = 22;
  private static final int FEWEST_COLUMNS = 8;
  private static final double BEFORE_AXIS = 18;
  private static final double AXIS = 144;
  private static final double KEY_WIDTH = 340;
  private static final double BESIDE = 8;
  private static final double TEXT_BELOW_MIDDLE = 6;

  private static final double LAST_BASE = 18;
  private static final double LAST_TIP = 38;
  private static final double DURATION_TOP = 66;
  private static final double DURATION_BOTTOM =
      DURATION_TOP + DurationStrip.height(DurationStrip.PART);

  private static final int SMALL_COLUMNS = 12;
  private static final double SMALL_BOTTOM =
      DURATION_TOP + DurationStrip.height(DurationStrip.SMALL_PART);
  private static final double SMALL_GRADE = SMALL_BOTTOM + 18;
  private static final double SMALL_WORDS = SMALL_GRADE + 6;
  private static final double SMALL_END = SMALL_GRADE + 14;

  private static final double GRADE_HEADING = DURATION_BOTTOM + 36;
  private static final double GRADE_TOP = GRADE_HEADING + 22;
  private static final double GRADE = 21;
  private static final List<String> GRADES =
      List.of("0 none", "1 fuller", "2 not usable", "3 usable", "4 fully firm");
  private static final int LEAST_USEFUL = 3;
  private static final double GRADE_HALF = 5;
  private static final double GRADE_WORDS = 24;
  private static final double GRADE_SHAPE = 12;

  private static final double VOLUME_HEADING = GRADE_TOP + (GRADES.size() - 1) * GRADE + 36;
  private static final double VOLUME_TOP = VOLUME_HEADING + 22;
  private static final double VOLUME_HEIGHT = 56;
  private static final double VOLUME_BOTTOM = VOLUME_TOP + VOLUME_HEIGHT;
  private static final double ABOVE_STEP = 6;

  private static final double CLINIC_MIDDLE = VOLUME_BOTTOM + 18;
  private static final double DATE_BASE = CLINIC_MIDDLE + 30;
  private static final double DATE_ROW = 22;
  private static final double BELOW_DATES = 8;

  private final TimeLine timeLine;
  private final List<TimeLine.Point> points;
  private final double right;
  private final List<Placed> dates;
  private final DurationStrip durations;

  private TimeLineDrawing(TimeLine timeLine, List<TimeLine.Point> points, double part) {
    this.timeLine = timeLine;
    this.points = points;
    int columns = Math.max(points.size(), FEWEST_COLUMNS);
    this.right = LEFT + columns * COLUMN + BEFORE_AXIS;
    this.dates = LabelRows.of(dates());
    this.durations =
        new DurationStrip(DURATION_TOP + DurationStrip.height(part), LEFT, right, part);
  }

  /** The drawing as one svg element, whose label says in words what it shows. */
  public static String svg(TimeLine timeLine) {
    return new TimeLineDrawing(timeLine, timeLine.drawn(), DurationStrip.PART).drawn().toString();
  }

  /** The newest of them, small enough to stand beside other drawings, without a key. */
  public static String small(TimeLine timeLine) {
    List<TimeLine.Point> all = timeLine.points();
    List<TimeLine.Point> newest = all.subList(Math.max(0, all.size() - SMALL_COLUMNS), all.size());
    return new TimeLineDrawing(timeLine, newest, DurationStrip.SMALL_PART).beside().toString();
  }

  /** What a small drawing must not leave unsaid: every emergency there ever was; may be empty. */
  public static String emergencies(TimeLine timeLine) {
    return TimeLineWords.emergencies(timeLine).orElse("");
  }

  /** What was last, and how many the small drawing leaves out. */
  public static String last(TimeLine timeLine) {
    return TimeLineWords.last(timeLine, SMALL_COLUMNS);
  }

  /** What the drawing shows: a summary, then each injection that is drawn, the newest first. */
  public static List<String> words(TimeLine timeLine) {
    return TimeLineWords.all(timeLine);
  }

  private SvgElement drawn() {
    double width = right + AXIS;
    double top = DATE_BASE + (LabelRows.count(dates) - 1) * DATE_ROW + BELOW_DATES;
    var key = new Key(width - KEY_WIDTH, top, KEY_WIDTH);
    TimeLineWords.key(timeLine).forEach(key::add);
    boolean isWide = width >= 2 * KEY_WIDTH;
    var signs = isWide ? new Key(LEFT, top, KEY_WIDTH) : key;
    TimeLineWords.signs(timeLine).forEach(signs::add);
    return Pen.drawing(
        "drawing-timeline",
        width,
        Math.max(key.bottom(), signs.bottom()),
        TimeLineWords.summary(timeLine),
        Stream.of(
                last(),
                durations.ruled(),
                columns().flatMap(i -> durations.mark(points.get(i), at(i))),
                grades(),
                volumes(),
                clinic(),
                dates.stream().map(this::date),
                Stream.of(key, signs).distinct().flatMap(one -> one.parts().stream()))
            .flatMap(parts -> parts));
  }

  private SvgElement beside() {
    double shapes = right + GRADE_WORDS;
    return Pen.drawing(
        "drawing-timeline-small",
        right + AXIS,
        SMALL_END,
        TimeLineWords.summary(timeLine),
        Stream.of(
                last(),
                durations.ruled(),
                columns().flatMap(i -> durations.mark(points.get(i), at(i))),
                columns()
                    .map(i -> grade("drawing-grade", points.get(i).grade(), at(i), SMALL_GRADE)),
                Stream.of(
                    grade("drawing-sample", LEAST_USEFUL, right + GRADE_SHAPE, SMALL_GRADE),
                    Pen.text("drawing-number", shapes, SMALL_WORDS, "usable")))
            .flatMap(parts -> parts));
  }

  private Stream<Integer> columns() {
    return IntStream.range(0, points.size()).boxed();
  }

  /** Where the injection of a number stands; the last one always stands beside the words. */
  private double at(int index) {
    return right - BEFORE_AXIS - (points.size() - 1 - index) * COLUMN;
  }

  private Stream<SvgElement> last() {
    double x = at(points.size() - 1);
    return Stream.of(
        Pen.bold(Pen.centred("drawing-word", x, LAST_BASE, "last")), Sign.now(x, LAST_TIP, 0, 1));
  }

  private static double gradeAt(int grade) {
    return GRADE_TOP + (GRADES.size() - 1 - grade) * GRADE;
  }

  private Stream<SvgElement> grades() {
    return Stream.of(
            Stream.of(heading(GRADE_HEADING, "rigidity")),
            IntStream.range(0, GRADES.size()).boxed().flatMap(this::gradeLine),
            columns().map(this::gradeOnItsLine))
        .flatMap(parts -> parts);
  }

  private SvgElement gradeOnItsLine(int index) {
    int grade = points.get(index).grade();
    return grade("drawing-grade", grade, at(index), gradeAt(grade));
  }

  private Stream<SvgElement> gradeLine(int grade) {
    double y = gradeAt(grade);
    double words = right + GRADE_WORDS;
    return Stream.of(
        Pen.quiet(Pen.line("drawing-grade-line", LEFT, y, right, y)),
        grade("drawing-sample", grade, right + GRADE_SHAPE, y),
        Pen.text("drawing-number", words, y + TEXT_BELOW_MIDDLE, GRADES.get(grade)));
  }

  /** A filled square for a useful rigidity, a hollow circle for less. */
  private static SvgElement grade(String className, int grade, double x, double y) {
    return TimeLine.isUseful(grade)
        ? Pen.box(className, x - GRADE_HALF, y - GRADE_HALF, 2 * GRADE_HALF, 2 * GRADE_HALF)
        : Pen.open(Pen.dot(className, x, y, GRADE_HALF));
  }

  private double volumeAt(Volume volume) {
    Volume most = points.stream().map(TimeLine.Point::drawn).max(Volume::compareTo).orElseThrow();
    return VOLUME_BOTTOM - VOLUME_HEIGHT * volume.ratioTo(most);
  }

  private Stream<SvgElement> volumes() {
    double[] corners =
        columns()
            .flatMapToDouble(
                i -> DoubleStream.of(at(i) - COLUMN / 2, level(i), at(i) + COLUMN / 2, level(i)))
            .toArray();
    String newest = points.getLast().drawn().toString();
    return Stream.of(
            Stream.of(
                heading(VOLUME_HEADING, "volume drawn"),
                Pen.path("drawing-volumes", corners),
                Pen.line("drawing-rule", LEFT, VOLUME_BOTTOM, right, VOLUME_BOTTOM),
                Pen.bold(
                    beside(
                        level(points.size() - 1) + TEXT_BELOW_MIDDLE, "drawing-newest", newest))),
            volumeWords(),
            volumeZero())
        .flatMap(parts -> parts);
  }

  /** The words for the line at the bottom, unless the newest volume stands there. */
  private Stream<SvgElement> volumeZero() {
    boolean isFree = VOLUME_BOTTOM - level(points.size() - 1) >= Pen.TEXT;
    return isFree
        ? Stream.of(beside(VOLUME_BOTTOM + TEXT_BELOW_MIDDLE, "drawing-number", "0 mL"))
        : Stream.empty();
  }

  /** A volume is written above its step where the step is long enough to carry it. */
  private Stream<SvgElement> volumeWords() {
    var words = new ArrayList<SvgElement>();
    int start = 0;
    for (int i = 1; i < points.size(); i++) {
      if (!points.get(i).drawn().equals(points.get(start).drawn())) {
        words.addAll(volumeWord(start, i));
        start = i;
      }
    }
    return words.stream();
  }

  private List<SvgElement> volumeWord(int start, int end) {
    String words = points.get(start).drawn().toString();
    if (Pen.widthOf(words) > (end - start) * COLUMN) {
      return List.of();
    }
    double x = at(start) - COLUMN / 2;
    return List.of(Pen.text("drawing-number", x, level(start) - ABOVE_STEP, words));
  }

  private double level(int index) {
    return volumeAt(points.get(index).drawn());
  }

  private Stream<SvgElement> clinic() {
    return columns()
        .filter(i -> points.get(i).isInClinic())
        .map(i -> Sign.clinic(at(i), CLINIC_MIDDLE));
  }

  private SvgElement heading(double y, String words) {
    return Pen.bold(beside(y, "drawing-heading", words));
  }

  private SvgElement beside(double y, String className, String words) {
    return Pen.text(className, right + BESIDE, y, words);
  }

  /** The last date is always there, and that of each emergency; the others where there is room. */
  private List<Label> dates() {
    int last = points.size() - 1;
    var labels = new ArrayList<Label>();
    labels.add(new Label(at(last), TimeLineWords.date(points.get(last).date()), true));
    for (int i = last - 1; i >= 0; i--) {
      TimeLine.Point point = points.get(i);
      labels.add(new Label(at(i), TimeLineWords.day(point.date()), point.isEmergency()));
    }
    return labels;
  }

  private SvgElement date(Placed placed) {
    Label label = placed.label();
    return Pen.centred(
        "drawing-date", label.x(), DATE_BASE + placed.row() * DATE_ROW, label.words());
  }
}
