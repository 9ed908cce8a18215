package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static rungwise.drawing.Drawn.number;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import rungwise.quantities.Volume;

final class BarrelDrawingTest {

  /** Coordinates are written with three decimals; a sum of two of them may be one further off. */
  private static final double WRITTEN = 0.001;

  private static final double UNITS_IN_A_MILLIMETRE = 12;

  private static Drawn draw(DrawnDose dose) {
    return Drawn.of(BarrelDrawing.svg(dose, "dose"));
  }

  private static double zero(Drawn drawing) {
    return number(drawing.allOf("drawing-line").getFirst(), "x1");
  }

  @ParameterizedTest
  @MethodSource("rungwise.drawing.Scales#all")
  void the_edge_of_the_stopper_stands_at_the_volume_to_scale(BarrelScale scale) {
    for (DrawnDose dose : Scales.everyDose(scale)) {
      Drawn drawing = draw(dose);
      double expected =
          dose.volume().microlitres()
              * UNITS_IN_A_MILLIMETRE
              * scale.millimetres()
              / scale.capacity().microlitres();

      double edge = number(drawing.only("drawing-stopper-edge"), "x");

      assertThat(edge - zero(drawing)).isCloseTo(expected, within(WRITTEN));
    }
  }

  @ParameterizedTest
  @MethodSource("rungwise.drawing.Scales#all")
  void liquid_reaches_from_the_zero_line_to_the_stopper_and_the_stopper_lies_behind(
      BarrelScale scale) {
    for (DrawnDose dose : Scales.everyDose(scale)) {
      Drawn drawing = draw(dose);
      Element liquid = drawing.only("drawing-liquid");
      double edge = number(drawing.only("drawing-stopper-edge"), "x");

      assertThat(number(liquid, "x")).isCloseTo(zero(drawing), within(WRITTEN));
      assertThat(number(liquid, "x") + number(liquid, "width")).isCloseTo(edge, within(WRITTEN));
      assertThat(number(drawing.only("drawing-stopper"), "x")).isCloseTo(edge, within(WRITTEN));
    }
  }

  @ParameterizedTest
  @MethodSource("rungwise.drawing.Scales#all")
  void every_line_is_drawn_at_equal_distances_and_ends_at_the_capacity(BarrelScale scale) {
    Drawn drawing = draw(Scales.everyDose(scale).getFirst());

    List<Element> lines = drawing.allOf("drawing-line");

    long steps = scale.capacity().microlitres() / scale.graduation().microlitres();
    double distance = UNITS_IN_A_MILLIMETRE * scale.millimetres() / steps;
    assertThat(lines).hasSize((int) steps + 1);
    for (int i = 0; i < lines.size(); i++) {
      assertThat(number(lines.get(i), "x1") - zero(drawing))
          .isCloseTo(i * distance, within(WRITTEN));
      assertThat(number(lines.get(i), "x2")).isEqualTo(number(lines.get(i), "x1"));
    }
  }

  @ParameterizedTest
  @MethodSource("rungwise.drawing.Scales#all")
  void numbered_lines_are_longer_and_carry_their_number(BarrelScale scale) {
    Drawn drawing = draw(Scales.everyDose(scale).getFirst());
    List<Element> numbers = drawing.allOf("drawing-number");
    long between = scale.numberedEvery().microlitres() / scale.graduation().microlitres();
    List<Element> lines = drawing.allOf("drawing-line");
    double shortest = length(lines.get(1));

    for (int i = 0; i < lines.size(); i++) {
      if (i % between == 0) {
        assertThat(length(lines.get(i))).isGreaterThan(1.5 * shortest);
      } else {
        assertThat(length(lines.get(i))).isEqualTo(shortest);
      }
    }
    assertThat(numbers).hasSize((int) ((lines.size() - 1) / between));
    for (int i = 0; i < numbers.size(); i++) {
      Element line = lines.get((int) ((i + 1) * between));
      assertThat(number(numbers.get(i), "x")).isEqualTo(number(line, "x1"));
      assertThat(numbers.get(i).getAttribute("text-anchor")).isEqualTo("middle");
      assertThat(numbers.get(i).hasAttribute("transform")).isFalse();
    }
  }

  private static double length(Element line) {
    return number(line, "y2") - number(line, "y1");
  }

  @Test
  void the_needle_is_at_the_zero_line_and_numbers_grow_away_from_it() {
    Drawn drawing = draw(Scales.dose(Scales.MIDDLE, 200));

    double[] needle =
        Arrays.stream(drawing.only("drawing-needle").getAttribute("points").split(" "))
            .mapToDouble(Double::parseDouble)
            .toArray();
    List<String> numbers =
        drawing.allOf("drawing-number").stream().map(Element::getTextContent).toList();

    assertThat(needle[0]).isLessThan(zero(drawing));
    assertThat(numbers).containsExactly("5", "10", "15", "20", "25", "30", "35", "40", "45", "50");
  }

  @ParameterizedTest
  @MethodSource("rungwise.drawing.Scales#all")
  void the_words_outside_the_barrel_point_at_the_edge(BarrelScale scale) {
    for (DrawnDose dose : Scales.everyDose(scale)) {
      Drawn drawing = draw(dose);
      double edge = number(drawing.only("drawing-stopper-edge"), "x");
      double top = number(drawing.only("drawing-wall"), "y");
      Element volume = drawing.only("drawing-volume");
      Element mark = drawing.only("drawing-mark");

      assertThat(number(drawing.allOf("drawing-pointer").getFirst(), "x1")).isEqualTo(edge);
      assertThat(drawing.allOf("drawing-pointer").getLast().getAttribute("points"))
          .endsWith(SvgElement.number(edge) + " " + SvgElement.number(top));
      assertThat(volume.getTextContent()).isEqualTo(dose.volume().toString());
      assertThat(mark.getTextContent()).isEqualTo(dose.mark());
      assertThat(number(volume, "y")).isLessThan(number(mark, "y"));
      assertThat(number(mark, "y")).isLessThan(top);
    }
  }

  @ParameterizedTest
  @MethodSource("rungwise.drawing.Scales#all")
  void the_words_beside_the_drawing_name_the_volume_and_the_mark(BarrelScale scale) {
    for (DrawnDose dose : Scales.everyDose(scale)) {
      Drawn drawing = draw(dose);

      String title = drawing.withId("dose-title").getTextContent();
      String description = drawing.withId("dose-desc").getTextContent();

      assertThat(drawing.root().getAttribute("role")).isEqualTo("img");
      assertThat(drawing.root().getAttribute("aria-labelledby")).isEqualTo("dose-title dose-desc");
      assertThat(title).isEqualTo(dose.volume() + " (" + dose.mark() + ")");
      assertThat(description)
          .contains(dose.syringe())
          .contains("stands at " + MarkWords.of(scale, dose.volume()) + ", which is ")
          .contains(dose.volume().toString());
    }
  }

  @Test
  void two_drawings_on_one_page_share_no_id() {
    DrawnDose dose = Scales.dose(Scales.MIDDLE, 200);

    Drawn second = Drawn.of(BarrelDrawing.svg(dose, "next"));

    assertThat(second.elements().map(one -> one.getAttribute("id")).filter(id -> !id.isEmpty()))
        .containsExactly("next-title", "next-desc");
  }

  @Test
  void the_drawing_obeys_a_page_that_forbids_styles_and_scripts() {
    Drawn drawing = draw(Scales.dose(Scales.LARGE, 640));

    assertThat(drawing.elements().map(Element::getTagName))
        .doesNotContain("style", "script", "foreignObject", "image", "a", "use");
    assertThat(drawing.elements())
        .allSatisfy(
            one -> {
              assertThat(one.hasAttribute("style")).isFalse();
              assertThat(one.hasAttribute("href")).isFalse();
              assertThat(one.hasAttribute("onload")).isFalse();
              assertThat(List.of("", "none", "currentColor")).contains(one.getAttribute("fill"));
              assertThat(List.of("", "currentColor")).contains(one.getAttribute("stroke"));
            });
  }

  @Test
  void words_cannot_break_out_of_the_drawing() {
    var dose =
        new DrawnDose(
            Scales.MIDDLE,
            Volume.ofMicrolitres(200),
            "<script>\"&'\u0001\uD800",
            "a & b </text><svg onload='x'>");

    Drawn drawing = draw(dose);

    assertThat(drawing.only("drawing-mark").getTextContent()).isEqualTo("<script>\"&'  ");
    assertThat(drawing.allOf("drawing-caption").getLast().getTextContent())
        .isEqualTo("a & b </text><svg onload='x'>");
    assertThat(drawing.elements().map(Element::getTagName)).doesNotContain("script", "svg");
  }

  @Test
  void the_same_dose_is_drawn_the_same_each_time() {
    DrawnDose dose = Scales.dose(Scales.HALF_UNIT, 125);

    assertThat(BarrelDrawing.svg(dose, "dose")).isEqualTo(BarrelDrawing.svg(dose, "dose"));
  }

  @Test
  void the_whole_drawing_lies_inside_its_frame() {
    for (BarrelScale scale : Scales.all()) {
      for (DrawnDose dose : Scales.everyDose(scale)) {
        Drawn drawing = draw(dose);
        double width = drawing.width();

        assertThat(number(drawing.only("drawing-flange"), "x")).isBetween(0.0, width);
        assertThat(number(drawing.only("drawing-stopper"), "x") + 30).isBetween(0.0, width);
        assertThat(number(drawing.only("drawing-stopper"), "x") + 30)
            .isLessThan(number(drawing.only("drawing-flange"), "x"));
        assertThat(number(drawing.only("drawing-volume"), "x")).isBetween(0.0, width);
      }
    }
  }

  @Test
  void a_volume_without_a_line_and_words_that_are_missing_are_faults_of_the_program() {
    Volume between = Volume.ofMicrolitres(125);
    Volume beyond = Volume.ofMicrolitres(510);
    Volume onLine = Volume.ofMicrolitres(200);

    assertRefused(() -> new DrawnDose(Scales.MIDDLE, between, "mark", "syringe"));
    assertRefused(() -> new DrawnDose(Scales.MIDDLE, beyond, "mark", "syringe"));
    assertRefused(() -> new DrawnDose(Scales.MIDDLE, Volume.ZERO, "mark", "syringe"));
    assertRefused(() -> new DrawnDose(Scales.MIDDLE, onLine, " ", "syringe"));
    assertRefused(() -> new DrawnDose(Scales.MIDDLE, onLine, "mark", ""));
    assertRefused(() -> BarrelDrawing.svg(Scales.dose(Scales.MIDDLE, 200), "1 dose"));
    assertRefused(() -> BarrelDrawing.svg(Scales.dose(Scales.MIDDLE, 200), ""));
  }

  private static void assertRefused(Runnable run) {
    assertThatThrownBy(run::run)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }
}
