package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import rungwise.drawing.InjectionClock.Place;
import rungwise.drawing.InjectionClock.Side;
import rungwise.drawing.InjectionClock.View;
import rungwise.drawing.Schedule.State;
import rungwise.drawing.Schedule.Step;
import rungwise.drawing.chance.ChanceCurvesDrawing;
import rungwise.drawing.chance.ChanceMovesDrawing;
import rungwise.drawing.chance.SharesDrawing;
import rungwise.quantities.Volume;

/** What holds for the schedule, the time line and the injection clock alike. */
final class DrawingRulesTest {

  private static final String WEIGHT = "2";

  private static Step step(long microlitres, String words, State... states) {
    return new Step(Volume.ofMicrolitres(microlitres), words, words, Set.of(states));
  }

  /** Crowded and empty ones, marks at both ends, the longest numbers. */
  static Stream<String> drawings() {
    var drawings = new ArrayList<String>();
    for (int ends : List.of(1, 15)) {
      List<Step> steps =
          IntStream.rangeClosed(1, 15)
              .mapToObj(
                  i -> i == ends ? step(5L * i, "a", State.NOW, State.PROPOSED) : step(5L * i, "b"))
              .toList();
      drawings.add(ScheduleDrawing.svg(new Schedule(steps, Optional.empty())));
      drawings.add(
          ScheduleDrawing.svg(new Schedule(steps, Optional.of(Volume.ofMicrolitres(1_125)))));
      drawings.add(
          ScheduleDrawing.small(new Schedule(steps, Optional.of(Volume.ofMicrolitres(1_125)))));
    }
    for (int count : List.of(1, 12, 200)) {
      drawings.add(TimeLineDrawing.svg(Points.random(count, count)));
      drawings.add(TimeLineDrawing.small(Points.random(count, count)));
    }
    for (int hour : List.of(6, 7, 9, 12)) {
      Place place = new Place(Side.HIS_RIGHT, hour);
      var clock = new InjectionClock(View.FACING_HIM, List.of(place, place, place, place, place));
      drawings.add(InjectionClockDrawing.svg(clock));
      drawings.add(InjectionClockDrawing.small(clock));
    }
    for (boolean isCrowded : List.of(true, false)) {
      drawings.add(ChanceCurvesDrawing.svg(Chances.curves(isCrowded)));
      drawings.add(ChanceMovesDrawing.svg(Chances.moves(isCrowded ? 31 : 1)));
    }
    for (int count : List.of(1, 3, 10, 16)) {
      drawings.add(SharesDrawing.svg(Chances.shares(count)));
    }
    return drawings.stream();
  }

  @ParameterizedTest
  @MethodSource("drawings")
  void the_drawing_obeys_a_page_that_forbids_styles_and_scripts(String svg) {
    Drawn drawing = Drawn.of(svg);

    assertThat(drawing.elements().map(Element::getTagName))
        .isSubsetOf("line", "text", "rect", "circle", "polygon", "polyline");
    assertThat(drawing.elements())
        .allSatisfy(
            one -> {
              for (String forbidden : List.of("style", "href", "onload", "id")) {
                assertThat(one.hasAttribute(forbidden)).as(forbidden).isFalse();
              }
              assertThat(List.of("", "none")).contains(one.getAttribute("fill"));
              assertThat(List.of("", "currentColor")).contains(one.getAttribute("stroke"));
            });
    assertThat(drawing.root().getAttribute("fill")).isEqualTo("currentColor");
  }

  @ParameterizedTest
  @MethodSource("drawings")
  void every_line_has_the_one_weight(String svg) {
    assertThat(Drawn.of(svg).elements().filter(one -> one.hasAttribute("stroke")))
        .isNotEmpty()
        .allSatisfy(one -> assertThat(one.getAttribute("stroke-width")).isEqualTo(WEIGHT));
  }

  @ParameterizedTest
  @MethodSource("drawings")
  void everything_lies_inside_the_frame(String svg) {
    Drawn drawing = Drawn.of(svg);
    double height = Double.parseDouble(drawing.root().getAttribute("height"));
    Map<String, Double> ends =
        Map.of(
            "x",
            drawing.width(),
            "x1",
            drawing.width(),
            "x2",
            drawing.width(),
            "cx",
            drawing.width(),
            "y",
            height,
            "y1",
            height,
            "y2",
            height,
            "cy",
            height);

    ends.forEach(
        (attribute, end) ->
            assertThat(drawing.elements().filter(one -> one.hasAttribute(attribute)))
                .allSatisfy(one -> assertThat(Drawn.number(one, attribute)).isBetween(0.0, end)));
  }

  @ParameterizedTest
  @MethodSource("drawings")
  void no_text_runs_out_of_the_frame(String svg) {
    Drawn drawing = Drawn.of(svg);

    assertThat(drawing.elements().filter(one -> one.getTagName().equals("text")))
        .allSatisfy(
            text -> {
              double width = Pen.widthOf(text.getTextContent()) * narrow(text);
              double x = Drawn.number(text, "x");
              double start =
                  switch (text.getAttribute("text-anchor")) {
                    case "middle" -> x - width / 2;
                    case "end" -> x - width;
                    default -> x;
                  };
              assertThat(start).as(text.getTextContent()).isGreaterThan(-1);
              assertThat(start + width).as(text.getTextContent()).isLessThan(drawing.width() + 1);
            });
  }

  /** Sentences have more narrow letters than labels, which are mostly digits. */
  private static double narrow(Element text) {
    return text.getAttribute("class").contains("drawing-key") ? 0.5 / 0.56 : 1;
  }

  @Test
  void words_cannot_break_out_of_the_drawing() {
    String evil = "<script>\"&'\u0001\uD800</text><svg onload='x'>";

    Drawn drawing =
        Drawn.of(
            ScheduleDrawing.svg(
                new Schedule(List.of(step(100, evil, State.NOW)), Optional.empty())));

    assertThat(drawing.elements().map(Element::getTagName)).doesNotContain("script", "svg");
    assertThat(drawing.key()).contains("<script>\"&'  </text><svg onload='x'>");
  }

  @Test
  void the_same_sign_has_the_same_shape_in_every_drawing() {
    var schedule =
        new Schedule(
            List.of(step(100, "a", State.NOW), step(200, "b", State.PROPOSED)), Optional.empty());
    var clock = new InjectionClock(View.FACING_HIM, List.of(new Place(Side.HIS_RIGHT, 12)));
    List<Drawn> all =
        List.of(
            Drawn.of(ScheduleDrawing.svg(schedule)),
            Drawn.of(TimeLineDrawing.svg(Points.line(Points.calm(0)))),
            Drawn.of(InjectionClockDrawing.svg(clock)),
            Drawn.of(ChanceCurvesDrawing.svg(Chances.curves(/* isCrowded= */ true))));

    assertThat(all.stream().map(drawing -> shape(drawing.allOf("drawing-now").getFirst())))
        .allSatisfy(
            shape ->
                assertThat(shape).isEqualTo(shape(all.getFirst().allOf("drawing-now").getLast())));
  }

  /** The corners of an arrow, seen from its tip. */
  private static List<Long> shape(Element arrow) {
    double[] points =
        Stream.of(arrow.getAttribute("points").split(" ", -1))
            .mapToDouble(Double::parseDouble)
            .toArray();
    return IntStream.range(0, points.length)
        .mapToObj(i -> Math.round(points[i] - points[i % 2]))
        .toList();
  }
}
