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
import rungwise.drawing.chance.Shares;
import rungwise.drawing.chance.SharesDrawing;
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

  @Test
  void each_share_stands_at_its_height_beside_what_was_expected() {
    Drawn drawing = Drawn.of(SharesDrawing.svg(Chances.shares(3)));
    List<Element> rules = drawing.allOf("drawing-chance-line");
    double none = Drawn.number(rules.get(0), "y1");
    double top = Drawn.number(rules.get(2), "y1");
    List<Element> reported = drawing.allOf("drawing-reported");
    Element stem = drawing.allOf("drawing-range").getFirst();

    // Shares 0.05, 0.2 and from 0.15 to 0.2 on a scale that ends at the next round number.
    assertThat(drawing.allOf("drawing-number").getLast().getTextContent()).isEqualTo("50 %");
    assertThat(reported.stream().map(Element::getTagName))
        .containsExactly("circle", "circle", "rect");
    assertThat((none - Drawn.number(reported.get(0), "cy")) / (none - top))
        .isCloseTo(0.05 / 0.5, within(FINE));
    assertThat((none - Drawn.number(reported.get(1), "cy")) / (none - top))
        .isCloseTo(0.2 / 0.5, within(FINE));
    assertThat((none - Drawn.number(reported.get(2), "y")) / (none - top))
        .isCloseTo(0.2 / 0.5, within(FINE));
    assertThat(Drawn.number(reported.get(2), "height") / (none - top))
        .isCloseTo(0.05 / 0.5, within(FINE));
    assertThat((none - Drawn.number(stem, "y1")) / (none - top)).isCloseTo(0, within(FINE));
    assertThat((none - Drawn.number(stem, "y2")) / (none - top))
        .isCloseTo(0.13 / 0.5, within(FINE));
    assertThat(Drawn.number(stem, "x1")).isEqualTo(Drawn.number(reported.getFirst(), "cx"));
    assertThat(drawing.allOf("drawing-mean")).hasSize(3);
  }

  @Test
  void a_share_outside_has_a_sign_above_it_and_words_for_it() {
    Shares shares = Chances.shares(3);
    Drawn drawing = Drawn.of(SharesDrawing.svg(shares));
    Element sign = drawing.only("drawing-outside");

    assertThat(sign.getTextContent()).isEqualTo("!");
    assertThat(sign.getAttribute("x"))
        .isEqualTo(drawing.allOf("drawing-label").get(2).getAttribute("x"));
    assertThat(drawing.key())
        .contains("Dot: reported.", "Bar:", "!: Outside what was expected, as one in ten is")
        .contains(Chances.CAVEAT);
    assertThat(SharesDrawing.words(shares))
        .containsExactly(
            Chances.CAVEAT,
            "Useful responses by volume.",
            "Volume 0.",
            "Volume 1.",
            "Volume 2.",
            "Outside what was expected, as one in ten is by chance: 0.05 mL to 0.1 mL.");
    assertThat(drawing.root().getAttribute("aria-label"))
        .isEqualTo(String.join(" ", SharesDrawing.words(shares)));
  }

  @Test
  void where_no_share_is_outside_it_says_so_and_speaks_of_no_bar() {
    Drawn drawing = Drawn.of(SharesDrawing.svg(Chances.shares(1)));

    assertThat(drawing.allOf("drawing-outside")).isEmpty();
    assertThat(drawing.key())
        .contains("None lies outside what was expected.")
        .doesNotContain("Bar:", "!:");
  }

  /** A share at the very end of the range lies within it, and a bar that touches it does. */
  @ParameterizedTest
  @CsvSource({
    "0.2, 0.2, false",
    "0.4, 0.4, false",
    "0.19, 0.19, true",
    "0.41, 0.41, true",
    "0.1, 0.2, false",
    "0.4, 0.9, false",
    "0.1, 0.19, true",
    "0, 1, false"
  })
  void a_share_is_outside_where_nothing_that_may_have_been_reported_is_within(
      double low, double high, boolean isOutside) {
    var column = new Shares.Column("a", low, high, new Band(0.2, 0.3, 0.4), "a");

    assertThat(column.isOutside()).isEqualTo(isOutside);
  }

  @Test
  void labels_of_shares_are_broken_and_do_not_touch_each_other() {
    for (int count : List.of(3, 10, 16)) {
      List<Element> labels =
          Drawn.of(SharesDrawing.svg(Chances.shares(count))).allOf("drawing-label");
      List<String> first =
          labels.stream()
              .map(Element::getTextContent)
              .map(words -> words.replace('\u00A0', ' '))
              .limit(4)
              .toList();
      assertThat(first).containsExactly("0 mL to", "0.05 mL", "0.05 mL to", "0.1 mL");
      assertThat(labels).hasSize(2 * count);
      for (int i = 2; i < labels.size(); i++) {
        double apart = Drawn.number(labels.get(i), "x") - Drawn.number(labels.get(i - 2), "x");
        double halves =
            (Pen.widthOf(labels.get(i).getTextContent())
                    + Pen.widthOf(labels.get(i - 2).getTextContent()))
                / 2;
        assertThat(apart).isGreaterThan(halves);
      }
    }
  }

  @Test
  void a_bar_between_bounds_that_nearly_meet_is_still_seen() {
    var column = new Shares.Column("a", 0.5, 0.5001, new Band(0.4, 0.5, 0.6), "a");
    Drawn drawing =
        Drawn.of(SharesDrawing.svg(new Shares("b", List.of(column), List.of(), Chances.CAVEAT)));

    assertThat(Drawn.number(drawing.only("drawing-reported"), "height")).isEqualTo(4);
  }

  @Test
  void what_can_be_no_share_is_refused() {
    var band = new Band(0, 0, 1);

    assertThatThrownBy(() -> new Shares.Column("a", 0.5, 0.4, band, ""))
        .hasMessage("bug: a share between 0.5 and 0.4");
    assertThatThrownBy(() -> new Shares.Column("a", -0.1, 0.4, band, ""))
        .hasMessageStartingWith("bug: a share");
    assertThatThrownBy(() -> new Shares.Column("a", Double.NaN, 1, band, ""))
        .hasMessageStartingWith("bug: a share");
    assertThatThrownBy(() -> new Shares("a", List.of(), List.of(), ""))
        .hasMessage("bug: no shares");
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
