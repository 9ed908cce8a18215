package rungwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.drawing.InjectionClock.Place;
import rungwise.drawing.Key.Entry;

/**
 * A cross-section with the hours of a clock around it: where the last injections were given, where
 * the next one belongs, and where none belongs.
 *
 * <p>9 and 10, and 2 and 3 o'clock are open; all the rest of the ring is hatched, and 12 and 6
 * o'clock say why. His right and his left are written out, because the picture turns them round for
 * one of the two people who look at it.
 */
public final class InjectionClockDrawing {

  private static final double WIDTH = 420;
  private static final double CENTRE = 210;
  private static final double MIDDLE = 202;
  private static final double SKIN = 100;
  private static final double RING = 80;
  private static final double NUMBERS = 146;
  private static final double TIP = 106;
  private static final double WORDS = 168;
  private static final double TEXT_BELOW_MIDDLE = 6;

  private static final double BODY_ASIDE = 33;
  private static final double BODY_ABOVE = 10;
  private static final double BODY = 32;
  private static final double URETHRA_BELOW = 48;
  private static final double URETHRA = 13;

  private static final double DOT_STEP = 13;
  private static final double DOT_FIRST = 90;

  private static final int HOURS = 12;
  private static final int HATCHES_IN_AN_HOUR = 6;

  /** Half an hour beyond the outermost hours of a side, the side ends. */
  private static final double OPEN_FROM = 1.5;

  private static final double OPEN_TO = 3.5;

  private static final double TOP_WORDS = 18;
  private static final double BOTTOM_WORDS = 400;
  private static final double SIDE_WORDS = 346;
  private static final double KEY_TOP = 406;

  /** The small one: its radii as a part of the others, and where its middle stands. */
  private static final double SMALL = 0.6;

  private static final double SMALL_WIDTH = 310;
  private static final double SMALL_MIDDLE = 116;
  private static final double SMALL_END = 240;
  private static final double SMALL_SIDE_WORDS = 230;
  private static final double WORDS_FURTHER = 10;

  private final InjectionClock clock;
  private final double size;
  private final double centre;
  private final double middle;
  private final double words;

  private InjectionClockDrawing(
      InjectionClock clock, double size, double centre, double middle, double words) {
    this.clock = clock;
    this.size = size;
    this.centre = centre;
    this.middle = middle;
    this.words = words;
  }

  /** The drawing as one svg element, whose label says in words what it shows. */
  public static String svg(InjectionClock clock) {
    return new InjectionClockDrawing(clock, 1, CENTRE, MIDDLE, WORDS).drawn().toString();
  }

  /** The same without the sentences below it, small enough to stand beside other drawings. */
  public static String small(InjectionClock clock) {
    return new InjectionClockDrawing(
            clock, SMALL, SMALL_WIDTH / 2, SMALL_MIDDLE, WORDS + WORDS_FURTHER)
        .ringOnly()
        .toString();
  }

  /** What the drawing shows, as sentences. */
  public static String words(InjectionClock clock) {
    return Stream.concat(
            Stream.of(clock.view().words() + "."), key(clock).stream().map(Entry::words))
        .collect(Collectors.joining(" "));
  }

  private static List<Entry> key(InjectionClock clock) {
    var entries = new ArrayList<Entry>();
    entries.add(Entry.of(clock.last().isPresent() ? Sign.NOW : Sign.NONE, clock.lastWords()));
    entries.add(Entry.of(Sign.NEXT, clock.nextWords()));
    if (clock.places().size() > 1) {
      String before =
          clock.places().stream().skip(1).map(Place::words).collect(Collectors.joining("; "));
      entries.add(Entry.of(Sign.PAST, "Before that, newest first: " + before + "."));
    }
    entries.add(
        Entry.of(
            Sign.CLOSED,
            "Not here, hatched: nerves and vessels from 11 to 1 o'clock, urethra at 6 o'clock with"
                + " the skin beside it."));
    return List.copyOf(entries);
  }

  private SvgElement drawn() {
    var key = new Key(0, KEY_TOP, WIDTH);
    key.add(Entry.of(Sign.NONE, clock.view().words() + "."));
    key(clock).forEach(key::add);
    return Pen.drawing(
        "drawing-clock",
        WIDTH,
        key.bottom(),
        words(clock),
        Stream.of(
                section(),
                closed(),
                hours(),
                places(),
                marks(),
                sides(WIDTH, SIDE_WORDS),
                notHere(),
                key.parts().stream())
            .flatMap(parts -> parts));
  }

  private SvgElement ringOnly() {
    return Pen.drawing(
        "drawing-clock-small",
        SMALL_WIDTH,
        SMALL_END,
        words(clock),
        Stream.of(
                section(),
                closed(),
                hours(),
                places(),
                marks(),
                sides(SMALL_WIDTH, SMALL_SIDE_WORDS))
            .flatMap(parts -> parts));
  }

  private double x(double hour, double radius) {
    return centre + size * radius * StrictMath.sin(2 * Math.PI * hour / HOURS);
  }

  private double y(double hour, double radius) {
    return middle - size * radius * StrictMath.cos(2 * Math.PI * hour / HOURS);
  }

  /** The skin, the two bodies into which is injected, and the urethra below them. */
  private Stream<SvgElement> section() {
    return Stream.of(
            circle("drawing-skin", 0, 0, SKIN),
            circle("drawing-ring", 0, 0, RING),
            circle("drawing-body", -BODY_ASIDE, -BODY_ABOVE, BODY),
            circle("drawing-body", BODY_ASIDE, -BODY_ABOVE, BODY),
            circle("drawing-urethra", 0, URETHRA_BELOW, URETHRA))
        .map(Pen::open);
  }

  private SvgElement circle(String className, double aside, double below, double radius) {
    return Pen.dot(className, centre + size * aside, middle + size * below, size * radius);
  }

  /** The ring is hatched from the skin inwards wherever no injection belongs. */
  private Stream<SvgElement> closed() {
    return IntStream.range(0, HOURS * HATCHES_IN_AN_HOUR)
        .mapToDouble(i -> (double) i / HATCHES_IN_AN_HOUR)
        .filter(hour -> !isOpen(hour))
        .mapToObj(
            hour ->
                Pen.quiet(
                    Pen.line(
                        "drawing-hatch",
                        x(hour, RING),
                        y(hour, RING),
                        x(hour, SKIN),
                        y(hour, SKIN))));
  }

  private static boolean isOpen(double hour) {
    double fromNoon = Math.min(hour, HOURS - hour);
    return fromNoon > OPEN_FROM && fromNoon < OPEN_TO;
  }

  private Stream<SvgElement> hours() {
    return IntStream.rangeClosed(1, HOURS)
        .mapToObj(
            hour ->
                Pen.centred(
                    "drawing-number",
                    x(hour, NUMBERS),
                    y(hour, NUMBERS) + TEXT_BELOW_MIDDLE,
                    Integer.toString(hour)));
  }

  /** Earlier places as dots, the newest at the skin, older ones at the same hour behind it. */
  private Stream<SvgElement> places() {
    var dots = new ArrayList<SvgElement>();
    List<Integer> hours = clock.places().stream().skip(1).map(Place::hour).toList();
    for (int i = 0; i < hours.size(); i++) {
      int hour = hours.get(i);
      long newer = hours.subList(0, i).stream().filter(other -> other == hour).count();
      double radius = DOT_FIRST - newer * DOT_STEP;
      dots.add(Sign.past(x(hour, radius), y(hour, radius)));
    }
    return dots.stream();
  }

  private Stream<SvgElement> marks() {
    Stream<SvgElement> last =
        clock.last().stream()
            .map(Place::hour)
            .flatMap(hour -> Stream.of(arrow(Sign::now, hour), word(hour, "last")));
    Stream<SvgElement> next =
        clock.next().stream()
            .map(Place::hour)
            .flatMap(hour -> Stream.of(arrow(Sign::next, hour), word(hour, "next")));
    return Stream.concat(last, next);
  }

  /** How an arrow is drawn, whose tip and direction are given. */
  private interface Arrow {
    SvgElement at(double x, double y, double dx, double dy);
  }

  /** An arrow from outside to the middle. */
  private SvgElement arrow(Arrow arrow, int hour) {
    return arrow.at(x(hour, TIP), y(hour, TIP), centre - x(hour, 1), middle - y(hour, 1));
  }

  private SvgElement word(int hour, String word) {
    double y = y(hour, words) + TEXT_BELOW_MIDDLE;
    return Pen.bold(Pen.anchored("drawing-word", x(hour, words), y, anchor(hour), word));
  }

  private static String anchor(int hour) {
    if (hour % InjectionClock.BOTTOM == 0) {
      return "middle";
    }
    return hour < InjectionClock.BOTTOM ? "start" : "end";
  }

  private Stream<SvgElement> sides(double width, double base) {
    String left = clock.view().left().words();
    String right = clock.view().left().other().words();
    return Stream.of(
        Pen.bold(Pen.text("drawing-side", 0, base, left)),
        Pen.bold(Pen.anchored("drawing-side", width, base, "end", right)));
  }

  private Stream<SvgElement> notHere() {
    return Stream.of(
        Pen.centred("drawing-word", centre, TOP_WORDS, "not here: nerves and vessels"),
        Pen.centred("drawing-word", centre, BOTTOM_WORDS, "not here: urethra"));
  }
}
