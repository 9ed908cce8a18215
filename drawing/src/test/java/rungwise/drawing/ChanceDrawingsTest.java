package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import rungwise.drawing.chance.Band;
import rungwise.drawing.chance.ChanceCurves;
import rungwise.drawing.chance.ChanceCurvesDrawing;
import rungwise.drawing.chance.ChanceMoves;
import rungwise.drawing.chance.ChanceMovesDrawing;
import rungwise.quantities.Volume;

/** What the drawings of chances show. */
final class ChanceDrawingsTest {

  private static final double FINE = 0.01;

  private static Drawn crowded() {
    return Drawn.of(ChanceCurvesDrawing.svg(Chances.curves(/* isCrowded= */ true)));
  }

  private static double[] corners(Element line) {
    return Stream.of(line.getAttribute("points").split(" ", -1))
        .mapToDouble(Double::parseDouble)
        .toArray();
  }

  @Test
  void a_curve_stands_at_its_chance_and_volume_to_scale() {
    Drawn drawing = crowded();
    double[] curve = corners(drawing.only("drawing-useful"));
    List<Element> rules = drawing.allOf("drawing-chance-line");
    double none = Drawn.number(rules.get(0), "y1");
    double certain = Drawn.number(rules.get(2), "y1");
    double limit = Drawn.number(drawing.allOf("drawing-limit").getFirst(), "x1");

    // Eight points, the last at the maximum with a chance of 0.8, the fourth at half with 0.4.
    assertThat(curve).hasSize(16);
    assertThat(curve[14]).isCloseTo(limit, within(FINE));
    assertThat((none - curve[15]) / (none - certain)).isCloseTo(0.8, within(FINE));
    assertThat((none - curve[7]) / (none - certain)).isCloseTo(0.4, within(FINE));
    double zero = Drawn.number(rules.get(0), "x1");
    assertThat((curve[6] - zero) / (limit - zero)).isCloseTo(0.5, within(FINE));
  }

  @Test
  void the_lower_scale_ends_at_the_next_round_number() {
    Drawn drawing = crowded();
    List<String> numbers =
        drawing.allOf("drawing-number").stream().map(Element::getTextContent).toList();

    // The largest is 0.8 / 50 = 1.6 %.
    assertThat(numbers).contains("2 %", "1 %", "0 %", "100 %", "50 %").doesNotContain("5 %");
  }

  @Test
  void injections_are_told_by_shape_and_the_long_one_is_loud() {
    Drawn drawing = crowded();

    assertThat(drawing.allOf("drawing-grade").stream().map(Element::getTagName))
        .containsExactly("circle", "rect", "rect");
    assertThat(drawing.only("drawing-alarm").getTextContent()).isEqualTo("!");
    assertThat(drawing.key())
        .contains("Now: 0.75 mL", "Next, if signed: 0.8 mL", "Closed from 0.6 mL on")
        .contains("Maximum: 0.8 mL", Chances.CAVEAT);
  }

  @Test
  void the_words_say_the_same_and_begin_with_what_it_rests_on() {
    ChanceCurves curves = Chances.curves(/* isCrowded= */ true);

    assertThat(ChanceCurvesDrawing.words(curves))
        .containsExactly(
            Chances.CAVEAT,
            "0.4 mL: usable 40 %.",
            "Injections of this preparation: 3, usable: 2, 2 h or longer, known or possible: 1.");
    assertThat(crowded().root().getAttribute("aria-label"))
        .isEqualTo(String.join(" ", ChanceCurvesDrawing.words(curves)));
  }

  @Test
  void each_report_has_its_dot_and_its_range() {
    ChanceMoves moves = Chances.moves(5);
    Drawn drawing = Drawn.of(ChanceMovesDrawing.svg(moves));

    assertThat(drawing.allOf("drawing-useful")).hasSize(5);
    assertThat(drawing.allOf("drawing-range")).hasSize(10);
    assertThat(drawing.allOf("drawing-date").stream().map(Element::getTextContent))
        .contains("before", "4 Mar");
    assertThat(ChanceMovesDrawing.words(moves).getFirst()).isEqualTo("after report 4");
    assertThat(drawing.root().getAttribute("aria-label"))
        .isEqualTo(Chances.CAVEAT + " Now: after report 4");
  }

  @ParameterizedTest
  @CsvSource({"-0.1, 0, 0.1", "0, 1.1, 1", "NaN, 0.5, 1", "0.3, 0.3, 0.2"})
  void what_can_be_no_chance_is_refused(double low, double middle, double high) {
    assertThatThrownBy(() -> new Band(low, middle, high)).hasMessageStartingWith("bug: a chance");
  }

  @Test
  void curves_that_turn_back_or_pass_the_maximum_are_refused() {
    ChanceCurves sound = Chances.curves(/* isCrowded= */ false);

    assertThatThrownBy(() -> with(sound.points().reversed(), 800)).hasMessageContaining("turn");
    assertThatThrownBy(() -> with(sound.points(), 700)).hasMessageStartingWith("bug: curves over");
    assertThatThrownBy(() -> new ChanceMoves(Volume.ofMicrolitres(1), List.of(), ""))
        .hasMessage("bug: nothing moved");
  }

  private static ChanceCurves with(List<ChanceCurves.Point> points, long maximum) {
    return new ChanceCurves(
        points,
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Volume.ofMicrolitres(maximum),
        Optional.empty(),
        List.of(),
        List.of(),
        "");
  }
}
