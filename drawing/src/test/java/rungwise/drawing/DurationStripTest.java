package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rungwise.drawing.Drawn.number;
import static rungwise.drawing.Points.atLeast;
import static rungwise.drawing.Points.between;
import static rungwise.drawing.Points.calm;
import static rungwise.drawing.Points.exactly;
import static rungwise.drawing.Points.line;
import static rungwise.drawing.Points.notKnown;
import static rungwise.drawing.Points.point;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import rungwise.drawing.TimeLine.Note;
import rungwise.drawing.TimeLine.Point;

/** The part of the time line that shows how long each erection lasted. */
final class DurationStripTest {

  /** Coordinates are written with three decimals. */
  private static final double WRITTEN = 0.001;

  private static Drawn draw(TimeLine timeLine) {
    return Drawn.of(TimeLineDrawing.svg(timeLine));
  }

  private static double bottom(Drawn drawing) {
    return number(drawing.allOf("drawing-rule").getFirst(), "y1");
  }

  /** The line at one hour, the unit of the scale. */
  private static double hour(Drawn drawing) {
    return bottom(drawing) - number(drawing.allOf("drawing-hour").getFirst(), "y1");
  }

  /** How many units of the scale something stands above its zero. */
  private static double height(Drawn drawing, double y) {
    return (bottom(drawing) - y) / hour(drawing);
  }

  @Test
  void the_lines_stand_at_one_two_and_four_hours() {
    Drawn drawing = draw(line(calm(0)));
    List<Element> hours = drawing.allOf("drawing-hour");

    assertThat(height(drawing, number(hours.getLast(), "y1"))).isCloseTo(2, within(WRITTEN));
    assertThat(height(drawing, number(drawing.only("drawing-limit"), "y1")))
        .isCloseTo(3, within(WRITTEN));
    assertThat(number(drawing.only("drawing-beyond"), "y1"))
        .isLessThan(number(drawing.only("drawing-limit"), "y1"));
    assertThat(drawing.allOf("drawing-number").stream().map(Element::getTextContent))
        .contains("1 h", "2 h", "4 h: emergency");
  }

  /** Doubling the time beyond an hour is one unit more; between two doublings it is even. */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "15, 0.25",
    "45, 0.75",
    "59, 0.98333",
    "60, 1",
    "61, 1.01667",
    "90, 1.5",
    "119, 1.98333"
  })
  void a_known_duration_stands_at_its_minutes(long minutes, double units) {
    Drawn drawing = draw(line(point(0, 100, 3, exactly(minutes))));

    assertThat(height(drawing, number(drawing.only("drawing-soft"), "cy")))
        .isCloseTo(units, within(WRITTEN));
  }

  @ParameterizedTest
  @CsvSource({"120, 2", "180, 2.5", "239, 2.99167", "240, 3", "360, 3.5", "480, 4", "600, 4"})
  void from_two_hours_on_it_is_a_column_as_high_as_its_minutes(long minutes, double units) {
    Drawn drawing = draw(line(point(0, 100, 3, exactly(minutes))));
    boolean isEmergency = minutes >= 240;
    boolean isBeyondTheScale = minutes > 480;
    Element column = drawing.only(isEmergency ? "drawing-long" : "drawing-soft");
    double top = isBeyondTheScale ? tip(drawing.only("drawing-open-end")) : number(column, "y");

    assertThat(height(drawing, top)).isCloseTo(units, within(WRITTEN));
    assertThat(number(column, "y") + number(column, "height"))
        .isCloseTo(bottom(drawing), within(WRITTEN));
    assertThat(drawing.allOf("drawing-alarm")).hasSize(isEmergency ? 1 : 0);
  }

  private static double tip(Element polygon) {
    return Double.parseDouble(polygon.getAttribute("points").split(" ", -1)[1]);
  }

  @Test
  void at_least_is_open_upwards_and_between_is_a_bar_of_its_two_ends() {
    Drawn open = draw(line(point(0, 100, 3, atLeast(90))));
    Drawn bar = draw(line(point(0, 100, 3, between(60, 180))));
    Drawn unknown = draw(line(point(0, 100, 3, notKnown())));

    Element box = bar.only("drawing-between");
    assertThat(height(open, number(open.only("drawing-seen"), "y1")))
        .isCloseTo(1.5, within(WRITTEN));
    assertThat(height(open, tip(open.allOf("drawing-open-end").getLast())))
        .isCloseTo(4, within(WRITTEN));
    assertThat(height(bar, number(box, "y"))).isCloseTo(2.5, within(WRITTEN));
    assertThat(height(bar, number(box, "y") + number(box, "height"))).isCloseTo(1, within(WRITTEN));
    assertThat(box.getAttribute("fill")).isEqualTo("none");
    assertThat(number(unknown.only("drawing-not-known"), "cy"))
        .isCloseTo(bottom(unknown), within(WRITTEN));
    assertThat(unknown.only("drawing-question").getTextContent()).isEqualTo("?");
  }

  @Test
  void what_may_have_lasted_four_hours_is_a_filled_column_beyond_the_limit() {
    List<Point> emergencies =
        List.of(
            point(0, 100, 0, exactly(240)),
            point(0, 100, 1, atLeast(240)),
            point(0, 100, 2, between(60, 241)),
            point(0, 100, 2, atLeast(30), Note.FOUR_HOURS),
            point(0, 100, 4, exactly(100), Note.FOUR_HOURS),
            point(0, 100, 4, notKnown(), Note.FOUR_HOURS));

    for (Point emergency : emergencies) {
      Drawn drawing = draw(line(emergency));
      Element column = drawing.only("drawing-long");

      assertThat(number(column, "y")).isLessThanOrEqualTo(number(limit(drawing), "y1"));
      assertThat(column.hasAttribute("fill")).isFalse();
      assertThat(column.getAttribute("class")).contains("drawing-danger");
      assertThat(drawing.allOf("drawing-key").getFirst().getTextContent()).startsWith("Emergency");
      assertThat(drawing.root().getAttribute("aria-label")).startsWith("Emergency");
    }
  }

  private static Element limit(Drawn drawing) {
    return drawing.only("drawing-limit");
  }

  @Test
  void what_ended_before_four_hours_raises_no_alarm() {
    List<Point> calm =
        List.of(
            point(0, 100, 4, exactly(239)),
            point(0, 100, 4, atLeast(239)),
            point(0, 100, 4, between(120, 240)),
            point(0, 100, 4, notKnown()));

    for (Point point : calm) {
      Drawn drawing = draw(line(point));

      assertThat(drawing.allOf("drawing-alarm")).isEmpty();
      assertThat(drawing.allOf("drawing-long")).isEmpty();
      assertThat(String.join(" ", TimeLineDrawing.words(line(point)))).doesNotContain("mergency");
    }
  }
}
