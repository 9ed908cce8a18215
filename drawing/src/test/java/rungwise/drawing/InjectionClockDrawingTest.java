package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static rungwise.drawing.Drawn.number;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import rungwise.drawing.InjectionClock.Place;
import rungwise.drawing.InjectionClock.Side;
import rungwise.drawing.InjectionClock.View;

final class InjectionClockDrawingTest {

  /** Coordinates are written with three decimals; an angle is told from two of them. */
  private static final double WRITTEN = 0.01;

  private static InjectionClock clock(View view, Place... places) {
    return new InjectionClock(view, List.of(places));
  }

  private static Place right(int hour) {
    return new Place(Side.HIS_RIGHT, hour);
  }

  private static Place left(int hour) {
    return new Place(Side.HIS_LEFT, hour);
  }

  private static Drawn draw(InjectionClock clock) {
    return Drawn.of(InjectionClockDrawing.svg(clock));
  }

  /** The hour at which a point stands, seen from the middle of the skin. */
  private static double hour(Drawn drawing, double x, double y) {
    Element skin = drawing.only("drawing-skin");
    double angle = Math.atan2(x - number(skin, "cx"), number(skin, "cy") - y);
    return (angle * 6 / Math.PI + 12) % 12;
  }

  private static double hourOf(Drawn drawing, String sign) {
    double[] points =
        Arrays.stream(drawing.allOf(sign).getFirst().getAttribute("points").split(" ", -1))
            .mapToDouble(Double::parseDouble)
            .toArray();
    return hour(drawing, points[0], points[1]);
  }

  /** Every view with every last place that it allows. */
  static Stream<InjectionClock> everyLast() {
    return Arrays.stream(View.values())
        .flatMap(
            view ->
                IntStream.rangeClosed(1, 12)
                    .boxed()
                    .flatMap(
                        hour ->
                            Arrays.stream(Side.values())
                                .filter(side -> isOn(view, side, hour))
                                .map(side -> clock(view, new Place(side, hour)))));
  }

  /** Facing him his right is on the left, where the hours are 7 to 11; for himself it is not. */
  private static boolean isOn(View view, Side side, int hour) {
    boolean isOnTheLeft = (view == View.FACING_HIM) == (side == Side.HIS_RIGHT);
    return hour == 6 || hour == 12 || isOnTheLeft == (hour > 6);
  }

  @ParameterizedTest
  @MethodSource("everyLast")
  void the_last_place_is_marked_at_its_hour_and_the_next_on_the_other_side(InjectionClock clock) {
    Drawn drawing = draw(clock);
    Place last = clock.places().getFirst();
    String words = InjectionClockDrawing.words(clock);
    Side nextSide = last.side() == Side.HIS_LEFT ? Side.HIS_RIGHT : Side.HIS_LEFT;
    int nextHour = isOn(clock.view(), nextSide, 10) ? 10 : 2;
    String nextWords = nextSide == Side.HIS_LEFT ? "his left" : "his right";

    assertThat(hourOf(drawing, "drawing-now")).isCloseTo(last.hour() % 12, within(WRITTEN));
    assertThat(hourOf(drawing, "drawing-next")).isCloseTo(nextHour, within(WRITTEN));
    assertThat(words)
        .contains("Next: " + nextWords + ", " + nextHour + " o'clock.")
        .contains(", " + last.hour() + " o'clock");
    assertThat(words.contains("not a place to inject"))
        .isEqualTo(!List.of(9, 10, 2, 3).contains(last.hour()));
    assertThat(drawing.root().getAttribute("aria-label")).isEqualTo(words);
  }

  @Test
  void the_words_are_those_of_a_teacher() {
    assertThat(InjectionClockDrawing.words(clock(View.FACING_HIM, right(10), left(2))))
        .isEqualTo(
            "Seen by someone who faces him. Last: his right, 10 o'clock. Next: his left, 2 o'clock."
                + " Before that, newest first: his left, 2 o'clock. Not here, hatched: nerves and"
                + " vessels from 11 to 1 o'clock, urethra at 6 o'clock with the skin beside it.");
  }

  @Test
  void the_sides_change_places_with_the_view_and_are_always_written() {
    for (View view : View.values()) {
      Drawn drawing = draw(clock(view));
      List<Element> sides = drawing.allOf("drawing-side");
      List<String> expected =
          view == View.FACING_HIM
              ? List.of("his right", "his left")
              : List.of("his left", "his right");

      assertThat(sides.stream().map(Element::getTextContent)).isEqualTo(expected);
      assertThat(number(sides.getFirst(), "x")).isLessThan(number(sides.getLast(), "x"));
      assertThat(drawing.key()).startsWith(view.words());
    }
  }

  @ParameterizedTest
  @EnumSource
  void without_a_place_on_record_both_sides_are_next(View view) {
    Drawn drawing = draw(clock(view));
    String onTheLeft = view == View.FACING_HIM ? "his right" : "his left";

    assertThat(drawing.allOf("drawing-now")).isEmpty();
    assertThat(hourOf(drawing, "drawing-next")).isCloseTo(10, within(WRITTEN));
    assertThat(drawing.allOf("drawing-next")).hasSize(2 + 1);
    assertThat(InjectionClockDrawing.words(clock(view)))
        .contains("No place is on record.")
        .contains("Next: " + onTheLeft + ", 10 o'clock, or his ");
  }

  @Test
  void nothing_is_hatched_where_an_injection_belongs_and_all_the_rest_is() {
    Drawn drawing = draw(clock(View.FACING_HIM));
    double inTheRing = number(drawing.only("drawing-ring"), "r");
    double[] hatched =
        drawing.allOf("drawing-hatch").stream()
            .filter(line -> distance(drawing, line) >= inTheRing - 1)
            .mapToDouble(line -> hour(drawing, number(line, "x2"), number(line, "y2")))
            .filter(hour -> !Double.isNaN(hour))
            .sorted()
            .toArray();

    for (int hour = 1; hour <= 12; hour++) {
      int at = hour % 12;
      boolean isHatched =
          Arrays.stream(hatched)
              .anyMatch(one -> Math.abs(one - at) < WRITTEN || one > 12 - WRITTEN + at);
      assertThat(isHatched).as("%d o'clock", hour).isEqualTo(!List.of(9, 10, 2, 3).contains(hour));
    }
  }

  private static double distance(Drawn drawing, Element line) {
    Element skin = drawing.only("drawing-skin");
    double distance =
        Math.hypot(
            number(line, "x1") - number(skin, "cx"), number(line, "y1") - number(skin, "cy"));
    return distance > number(skin, "r") ? -1 : distance;
  }

  @Test
  void earlier_places_stand_at_their_hours_and_never_on_each_other() {
    Drawn drawing =
        draw(
            clock(
                View.FACING_HIM,
                right(10),
                left(2),
                right(10),
                left(2),
                right(9),
                left(2),
                left(3)));
    List<Element> dots = drawing.allOf("drawing-past");
    List<Integer> hours = List.of(2, 10, 2, 9, 2, 3);

    assertThat(dots).hasSize(hours.size() + 1);
    for (int i = 0; i < hours.size(); i++) {
      Element dot = dots.get(i);
      assertThat(hour(drawing, number(dot, "cx"), number(dot, "cy")))
          .isCloseTo(hours.get(i), within(WRITTEN));
    }
    assertThat(dots.stream().map(dot -> dot.getAttribute("cx") + " " + dot.getAttribute("cy")))
        .doesNotHaveDuplicates();
  }

  @Test
  void a_place_that_cannot_be_is_refused() {
    assertRefused(() -> right(0));
    assertRefused(() -> right(13));
    assertRefused(() -> right(-1));
    assertRefused(() -> clock(View.FACING_HIM, right(2)));
    assertRefused(() -> clock(View.FACING_HIM, left(10)));
    assertRefused(() -> clock(View.HIS_OWN, right(10)));
    assertRefused(() -> clock(View.HIS_OWN, left(2)));
    assertRefused(() -> new InjectionClock(View.FACING_HIM, Collections.nCopies(11, right(10))));
    assertThat(new InjectionClock(View.FACING_HIM, Collections.nCopies(10, right(10))).places())
        .hasSize(10);
  }

  private static void assertRefused(Runnable run) {
    assertThatThrownBy(run::run)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }
}
