package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static rungwise.drawing.Drawn.number;
import static rungwise.drawing.Points.atLeast;
import static rungwise.drawing.Points.between;
import static rungwise.drawing.Points.calm;
import static rungwise.drawing.Points.exactly;
import static rungwise.drawing.Points.line;
import static rungwise.drawing.Points.notKnown;
import static rungwise.drawing.Points.point;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import rungwise.drawing.TimeLine.Note;
import rungwise.drawing.TimeLine.Point;

final class TimeLineDrawingTest {

  /** Coordinates are written with three decimals. */
  private static final double WRITTEN = 0.001;

  private static Drawn draw(TimeLine timeLine) {
    return Drawn.of(TimeLineDrawing.svg(timeLine));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void rigidity_stands_on_its_line_and_is_told_by_shape_too(long seed) {
    TimeLine timeLine = Points.random(seed, 30);
    Drawn drawing = draw(timeLine);
    List<Element> lines = drawing.allOf("drawing-grade-line");
    List<Element> marks = drawing.allOf("drawing-grade");

    assertThat(marks).hasSameSizeAs(timeLine.points());
    for (int i = 0; i < marks.size(); i++) {
      int grade = timeLine.points().get(i).grade();
      Element mark = marks.get(i);
      assertThat(mark.getTagName()).isEqualTo(grade >= 3 ? "rect" : "circle");
      assertThat(middle(mark)).isCloseTo(number(lines.get(grade), "y1"), within(WRITTEN));
    }
    assertThat(lines.stream().map(line -> -number(line, "y1"))).isSorted();
  }

  private static double middle(Element mark) {
    return mark.getTagName().equals("rect")
        ? number(mark, "y") + number(mark, "height") / 2
        : number(mark, "cy");
  }

  private static double across(Element mark) {
    return mark.getTagName().equals("rect")
        ? number(mark, "x") + number(mark, "width") / 2
        : number(mark, "cx");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 7, 8, 9, 39, 40, 41, 200})
  void injections_stand_evenly_in_their_order_and_only_the_newest_are_drawn(int count) {
    TimeLine timeLine = Points.random(count, count);
    Drawn drawing = draw(timeLine);
    double[] across =
        drawing.allOf("drawing-grade").stream().mapToDouble(one -> across(one)).toArray();
    String words = TimeLineDrawing.words(timeLine).getFirst();

    assertThat(across).hasSize(Math.min(count, 40)).isSorted();
    assertThat(IntStream.range(1, across.length).mapToDouble(i -> across[i] - across[i - 1]))
        .allSatisfy(step -> assertThat(step).isCloseTo(22, within(WRITTEN)));
    assertThat(across[across.length - 1]).isLessThan(drawing.width());
    assertThat(words.contains("not drawn")).isEqualTo(count > 40);
    if (count > 40) {
      assertThat(words).contains((count - 40) + " earlier injection");
      assertThat(drawing.key()).contains((count - 40) + " earlier injection");
    }
  }

  @Test
  void the_volume_is_a_step_line_to_scale() {
    Drawn drawing = draw(line(point(0, 100, 1, exactly(5)), point(7, 400, 3, exactly(5))));
    double zero = number(drawing.allOf("drawing-rule").getLast(), "y1");
    double[] points =
        Arrays.stream(drawing.only("drawing-volumes").getAttribute("points").split(" ", -1))
            .mapToDouble(Double::parseDouble)
            .toArray();

    assertThat(points).hasSize(2 * 2 * 2);
    assertThat(points[3]).isEqualTo(points[1]);
    assertThat(points[5]).isEqualTo(points[7]);
    assertThat(zero - points[7]).isCloseTo(4 * (zero - points[1]), within(4 * WRITTEN));
    assertThat(drawing.only("drawing-newest").getTextContent()).isEqualTo("0.4 mL");
  }

  @Test
  void an_emergency_too_old_to_be_drawn_is_still_said() {
    var points = new ArrayList<Point>();
    points.add(point(0, 100, 2, exactly(300)));
    for (int day = 1; day <= 50; day++) {
      points.add(calm(day));
    }
    var timeLine = new TimeLine(points);

    Drawn drawing = draw(timeLine);

    assertThat(drawing.allOf("drawing-long")).isEmpty();
    assertThat(drawing.key())
        .startsWith("Emergency, 4 h or more, known or possible: 3 Jan 2026 (soft after 5 h).");
    assertThat(TimeLineDrawing.words(timeLine).getFirst()).contains("3 Jan 2026 (soft after 5 h)");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void the_dates_of_the_last_injection_and_of_each_emergency_are_never_left_out(long seed) {
    TimeLine timeLine = Points.random(seed, 40);
    List<String> dates =
        draw(timeLine).allOf("drawing-date").stream().map(Element::getTextContent).toList();

    assertThat(dates)
        .contains(TimeLineWords.date(timeLine.points().getLast().date()))
        .containsAll(
            timeLine.points().subList(0, 39).stream()
                .filter(Point::isEmergency)
                .map(point -> TimeLineWords.day(point.date()))
                .toList());
  }

  @Test
  void of_many_quiet_injections_some_dates_are_left_out() {
    var points = IntStream.range(0, 40).mapToObj(Points::calm).toList();

    assertThat(draw(new TimeLine(points)).allOf("drawing-date")).hasSizeBetween(5, 20);
  }

  @Test
  void the_words_say_each_injection_that_is_drawn() {
    TimeLine timeLine =
        line(
            point(0, 50, 1, exactly(0), Note.IN_CLINIC),
            point(7, 100, 2, between(30, 60)),
            point(14, 150, 3, notKnown()),
            point(21, 200, 4, atLeast(300)));

    Drawn drawing = draw(timeLine);

    assertThat(TimeLineDrawing.words(timeLine))
        .containsExactly(
            "Emergency, 4 h or more, known or possible: 24 Jan 2026 (still firm at 5 h, end not"
                + " known). 4 injections, 3 Jan 2026 to 24 Jan 2026. Last: 24 Jan 2026, at home:"
                + " 0.2 mL, rigidity 4, still firm at 5 h, end not known, emergency.",
            "24 Jan 2026, at home: 0.2 mL, rigidity 4, still firm at 5 h, end not known,"
                + " emergency.",
            "17 Jan 2026, at home: 0.15 mL, rigidity 3, duration not known.",
            "10 Jan 2026, at home: 0.1 mL, rigidity 2, soft between 30 min and 1 h.",
            "3 Jan 2026, in the clinic: 0.05 mL, rigidity 1, soft after 0 min.");
    assertThat(drawing.root().getAttribute("role")).isEqualTo("img");
    assertThat(drawing.root().getAttribute("aria-label"))
        .isEqualTo(TimeLineDrawing.words(timeLine).getFirst());
  }

  @Test
  void the_sign_of_the_clinic_stands_under_its_injections_only() {
    Drawn drawing = draw(line(point(0, 50, 1, exactly(9), Note.IN_CLINIC), calm(7), calm(9)));
    List<Element> signs = drawing.allOf("drawing-clinic");

    assertThat(signs).hasSize(1 + 1);
    assertThat(across(signs.getFirst()))
        .isCloseTo(across(drawing.allOf("drawing-grade").getFirst()), within(WRITTEN));
    assertThat(drawing.key()).contains("In the clinic.");
    assertThat(draw(line(calm(0))).allOf("drawing-clinic")).isEmpty();
  }

  @Test
  void an_injection_that_cannot_be_is_refused() {
    assertRefused(() -> point(0, 100, 5, notKnown()));
    assertRefused(() -> point(0, 100, 7, notKnown()));
    assertRefused(() -> point(0, 100, -1, notKnown()));
    assertRefused(() -> point(0, 0, 3, notKnown()));
    assertRefused(() -> exactly(-1));
    assertRefused(() -> between(60, 60));
    assertRefused(() -> between(60, 30));
    assertRefused(() -> new TimeLine(List.of()));
    assertRefused(() -> line(calm(1), calm(0)));
  }

  private static void assertRefused(Runnable run) {
    assertThatThrownBy(run::run)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }

  @Test
  void beside_a_small_one_every_emergency_is_named() {
    var points = new ArrayList<Point>();
    points.add(point(0, 100, 4, atLeast(240)));
    IntStream.rangeClosed(1, 30).mapToObj(Points::calm).forEach(points::add);
    var timeLine = new TimeLine(points);
    Drawn drawing = Drawn.of(TimeLineDrawing.small(timeLine));

    assertThat(drawing.allOf("drawing-long")).isEmpty();
    assertThat(drawing.allOf("drawing-grade")).hasSize(12);
    assertThat(TimeLineDrawing.emergencies(timeLine)).contains("3 Jan 2026", "still firm at 4 h");
    assertThat(TimeLineDrawing.last(timeLine)).contains("2 Feb 2026", "19 earlier injections");
    assertThat(TimeLineDrawing.emergencies(new TimeLine(points.subList(1, 31)))).isEmpty();
  }
}
