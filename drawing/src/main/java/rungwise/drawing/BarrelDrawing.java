package rungwise.drawing;

import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.quantities.Volume;

/**
 * A marked syringe, lying with its needle to the left, drawn up to a dose.
 *
 * <p>The scale is drawn to scale: a millimetre of it is {@value #PER_MILLIMETRE} units of the
 * drawing, so that single lines can be counted. The other parts are signs for what they are. The
 * stopper's edge that faces the liquid is what is read, so it is the heaviest line, and it goes on
 * outside the barrel up to the words for its mark. The numbers stand below the barrel, ruler-like,
 * so that the stopper hides none of them. The piston is cut off by a break line: where its other
 * end stands says nothing.
 *
 * <p>Every part is drawn in the colour of the text around the drawing, thinned where it is liquid
 * or rubber, so that it is right on dark ground and in grey print. Class names let a page give
 * other colours.
 */
public final class BarrelDrawing {

  /** Units of the drawing in a millimetre of the scale. */
  static final int PER_MILLIMETRE = 12;

  private static final double HEIGHT = 264;
  private static final double TOP = 104;
  private static final double BOTTOM = 176;
  private static final double MIDDLE = 140;
  private static final double ZERO = 116;
  private static final double AFTER_SCALE = 42;
  private static final double AFTER_BARREL = 66;

  private static final double NEEDLE_START = 6;
  private static final double NEEDLE_BEVEL = 10;
  private static final double NEEDLE_HALF = 1.8;
  private static final double HUB_START = 74;
  private static final double HUB_HALF_NARROW = 9;
  private static final double HUB_HALF_WIDE = 18;
  private static final double HUB_SHOULDER = 106;

  private static final double SHORT_LINE = 19;
  private static final double LONG_LINE = 35;
  private static final double LONG_LINE_BELOW = 8;
  private static final double SHORT_STROKE = 1.5;
  private static final double LONG_STROKE = 2.5;
  private static final double OUTLINE_STROKE = 2;
  private static final double NUMBER_BASE = 211;
  private static final double NUMBER_SIZE = 28;

  private static final double LIQUID_OPACITY = 0.13;
  private static final double RUBBER_OPACITY = 0.34;
  private static final double STOPPER_LENGTH = 30;
  private static final double EDGE_WIDTH = 5;
  private static final double ROD_HALF = 10;
  private static final double ROD_OPACITY = 0.6;
  private static final double FLANGE_WIDTH = 10;
  private static final double FLANGE_OVERHANG = 16;
  private static final double BREAK_STEP = 7;

  private static final double LEADER_TOP = 8;
  private static final double LEADER_GAP = 12;
  private static final double ARROW_HALF = 8;
  private static final double ARROW_HEIGHT = 14;
  private static final double VOLUME_BASE = 42;
  private static final double VOLUME_SIZE = 44;
  private static final double MARK_BASE = 79;
  private static final double MARK_SIZE = 31;
  private static final double CAPTION_BASE = 252;
  private static final double CAPTION_SIZE = 24;

  private static final String INK = "currentColor";

  private final DrawnDose dose;
  private final BarrelScale scale;
  private final double edge;
  private final double barrelEnd;

  private BarrelDrawing(DrawnDose dose) {
    this.dose = dose;
    this.scale = dose.scale();
    this.edge = at(dose.volume());
    this.barrelEnd = at(scale.capacity()) + AFTER_SCALE;
  }

  /**
   * The drawing as one svg element.
   *
   * @param idPrefix begins the ids in this drawing, so that a page may hold several; a letter, then
   *     letters, digits, "-" and "_"
   * @throws IllegalArgumentException if the prefix cannot begin an id
   */
  public static String svg(DrawnDose dose, String idPrefix) {
    if (!idPrefix.matches("[A-Za-z][A-Za-z0-9_-]*")) {
      throw new IllegalArgumentException("bug: \"" + idPrefix + "\" cannot begin an id");
    }
    return new BarrelDrawing(dose).drawn(idPrefix).toString();
  }

  /**
   * The drawing without any word or number, as large as the syringe is: its width and height are
   * given in millimetres.
   */
  public static SvgElement trueSize(DrawnDose dose) {
    var drawing = new BarrelDrawing(dose);
    return drawing.sized(
        SvgElement.of("svg").with("class", "drawing drawing-true-size"),
        1.0 / PER_MILLIMETRE,
        drawing.shapes());
  }

  /** The drawing with its words, as wide as that. */
  public static SvgElement enlarged(DrawnDose dose, int millimetres) {
    var drawing = new BarrelDrawing(dose);
    return drawing.sized(
        SvgElement.of("svg").with("class", "drawing drawing-barrel"),
        millimetres / drawing.width(),
        drawing.parts());
  }

  private SvgElement sized(SvgElement svg, double scale, Stream<SvgElement> parts) {
    return svg.with("xmlns", "http://www.w3.org/2000/svg")
        .with("width", SvgElement.number(width() * scale) + "mm")
        .with("height", SvgElement.number(HEIGHT * scale) + "mm")
        .with("viewBox", "0 0 " + SvgElement.number(width()) + " " + SvgElement.number(HEIGHT))
        .with("fill", INK)
        .holding(parts.toList());
  }

  private double width() {
    return barrelEnd + AFTER_BARREL;
  }

  private SvgElement drawn(String idPrefix) {
    String titleId = idPrefix + "-title";
    String descriptionId = idPrefix + "-desc";
    String width = SvgElement.number(width());
    return SvgElement.of("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("class", "drawing drawing-barrel")
        .with("viewBox", "0 0 " + width + " " + SvgElement.number(HEIGHT))
        .with("role", "img")
        .with("aria-labelledby", titleId + " " + descriptionId)
        .with("fill", INK)
        .holding(
            Stream.of(
                    Stream.of(
                        SvgElement.of("title").with("id", titleId).saying(dose.title()),
                        SvgElement.of("desc").with("id", descriptionId).saying(dose.description())),
                    parts())
                .flatMap(parts -> parts)
                .toList());
  }

  private Stream<SvgElement> parts() {
    return Stream.of(
            shapes(),
            scale.lines().stream().filter(scale::isNumberedAt).map(this::number),
            pointer(),
            captions())
        .flatMap(parts -> parts);
  }

  /** All that needs no words. */
  private Stream<SvgElement> shapes() {
    return Stream.of(
            needle(),
            Stream.of(liquid()),
            piston(),
            walls(),
            scale.lines().stream().map(this::line))
        .flatMap(parts -> parts);
  }

  /** Where a volume stands on the scale. */
  private double at(Volume volume) {
    return ZERO + volume.ratioTo(scale.capacity()) * scale.millimetres() * PER_MILLIMETRE;
  }

  private Stream<SvgElement> needle() {
    SvgElement needle =
        polygon(
            "drawing-needle",
            NEEDLE_START,
            MIDDLE + NEEDLE_HALF,
            NEEDLE_START + NEEDLE_BEVEL,
            MIDDLE - NEEDLE_HALF,
            HUB_START,
            MIDDLE - NEEDLE_HALF,
            HUB_START,
            MIDDLE + NEEDLE_HALF);
    SvgElement hub =
        polygon(
            "drawing-hub",
            HUB_START,
            MIDDLE - HUB_HALF_NARROW,
            HUB_SHOULDER,
            MIDDLE - HUB_HALF_WIDE,
            ZERO,
            MIDDLE - HUB_HALF_WIDE,
            ZERO,
            MIDDLE + HUB_HALF_WIDE,
            HUB_SHOULDER,
            MIDDLE + HUB_HALF_WIDE,
            HUB_START,
            MIDDLE + HUB_HALF_NARROW);
    return Stream.of(needle, outlined(hub));
  }

  private SvgElement liquid() {
    return box("drawing-liquid", ZERO, TOP, edge - ZERO, BOTTOM - TOP)
        .with("fill-opacity", LIQUID_OPACITY);
  }

  private Stream<SvgElement> piston() {
    double rodStart = edge + STOPPER_LENGTH;
    double rodEnd = barrelEnd + AFTER_BARREL - 2 * BREAK_STEP;
    SvgElement rod =
        polygon(
            "drawing-rod",
            rodStart,
            MIDDLE - ROD_HALF,
            rodEnd,
            MIDDLE - ROD_HALF,
            rodEnd - BREAK_STEP,
            MIDDLE,
            rodEnd + BREAK_STEP,
            MIDDLE,
            rodEnd,
            MIDDLE + ROD_HALF,
            rodStart,
            MIDDLE + ROD_HALF);
    return Stream.of(
        outlined(rod).with("stroke-opacity", ROD_OPACITY),
        box("drawing-stopper", edge, TOP, STOPPER_LENGTH, BOTTOM - TOP)
            .with("fill-opacity", RUBBER_OPACITY),
        box("drawing-stopper-edge", edge, TOP, EDGE_WIDTH, BOTTOM - TOP));
  }

  private Stream<SvgElement> walls() {
    return Stream.of(
        outlined(box("drawing-wall", ZERO, TOP, barrelEnd - ZERO, BOTTOM - TOP)),
        outlined(
            box(
                "drawing-flange",
                barrelEnd,
                TOP - FLANGE_OVERHANG,
                FLANGE_WIDTH,
                BOTTOM - TOP + 2 * FLANGE_OVERHANG)));
  }

  private SvgElement line(Volume volume) {
    boolean isLong = scale.isLongAt(volume);
    return SvgElement.of("line")
        .with("class", isLong ? "drawing-line drawing-line-long" : "drawing-line")
        .with("x1", at(volume))
        .with("y1", BOTTOM - (isLong ? LONG_LINE : SHORT_LINE))
        .with("x2", at(volume))
        .with("y2", BOTTOM + (isLong ? LONG_LINE_BELOW : 0))
        .with("stroke", INK)
        .with("stroke-width", isLong ? LONG_STROKE : SHORT_STROKE);
  }

  private SvgElement number(Volume volume) {
    return text("drawing-number", at(volume), NUMBER_BASE, NUMBER_SIZE, scale.numbers().at(volume))
        .with("text-anchor", "middle");
  }

  private Stream<SvgElement> pointer() {
    SvgElement leader =
        SvgElement.of("line")
            .with("class", "drawing-pointer")
            .with("x1", edge)
            .with("y1", LEADER_TOP)
            .with("x2", edge)
            .with("y2", TOP - ARROW_HEIGHT)
            .with("stroke", INK)
            .with("stroke-width", LONG_STROKE);
    SvgElement arrow =
        polygon(
            "drawing-pointer",
            edge - ARROW_HALF,
            TOP - ARROW_HEIGHT,
            edge + ARROW_HALF,
            TOP - ARROW_HEIGHT,
            edge,
            TOP);
    return Stream.concat(Stream.of(leader, arrow), label());
  }

  /** The words stand on that side of the pointer on which there is more room. */
  private Stream<SvgElement> label() {
    boolean isRoomOnTheRight = !dose.volume().times(2).isMoreThan(scale.capacity());
    double start = edge + (isRoomOnTheRight ? LEADER_GAP : -LEADER_GAP);
    String anchor = isRoomOnTheRight ? "start" : "end";
    return Stream.of(
        text("drawing-volume", start, VOLUME_BASE, VOLUME_SIZE, dose.volume().toString())
            .with("font-weight", "bold")
            .with("text-anchor", anchor),
        text("drawing-mark", start, MARK_BASE, MARK_SIZE, dose.mark()).with("text-anchor", anchor));
  }

  private Stream<SvgElement> captions() {
    return Stream.of(
        text("drawing-caption", NEEDLE_START, CAPTION_BASE, CAPTION_SIZE, dose.needle()),
        text("drawing-caption", barrelEnd, CAPTION_BASE, CAPTION_SIZE, dose.syringe())
            .with("text-anchor", "end"));
  }

  private static SvgElement text(String className, double x, double y, double size, String words) {
    return SvgElement.of("text")
        .with("class", className)
        .with("x", x)
        .with("y", y)
        .with("font-size", size)
        .saying(words);
  }

  private static SvgElement box(String className, double x, double y, double width, double height) {
    return SvgElement.of("rect")
        .with("class", className)
        .with("x", x)
        .with("y", y)
        .with("width", width)
        .with("height", height);
  }

  private static SvgElement polygon(String className, double... coordinates) {
    String points =
        Arrays.stream(coordinates).mapToObj(SvgElement::number).collect(Collectors.joining(" "));
    return SvgElement.of("polygon").with("class", className).with("points", points);
  }

  private static SvgElement outlined(SvgElement part) {
    return part.with("fill", "none").with("stroke", INK).with("stroke-width", OUTLINE_STROKE);
  }
}
