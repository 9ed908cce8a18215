package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static rungwise.drawing.Drawn.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import rungwise.drawing.Schedule.State;
import rungwise.drawing.Schedule.Step;
import rungwise.quantities.Volume;

final class ScheduleDrawingTest {

  /** Coordinates are written with three decimals. */
  private static final double WRITTEN = 0.001;

  private static Step step(long microlitres, State... states) {
    return new Step(
        Volume.ofMicrolitres(microlitres),
        microlitres / 10 + "-unit mark",
        "alprostadil " + microlitres / 50 + " mcg",
        Set.of(states));
  }

  private static Schedule usual() {
    return new Schedule(
        List.of(
            step(50, State.PAST),
            step(100, State.PAST, State.NOW),
            step(150, State.PROPOSED),
            step(200),
            step(300, State.CLOSED),
            step(350, State.CLOSED)),
        Optional.of(Volume.ofMicrolitres(400)));
  }

  private static Drawn draw(Schedule schedule) {
    return Drawn.of(ScheduleDrawing.svg(schedule));
  }

  /** Where a volume must stand, told from the two ends of the ruled line alone. */
  private static double expected(Drawn drawing, Schedule schedule, Volume volume) {
    Element rule = drawing.only("drawing-rule");
    long end = schedule.maximum().orElse(schedule.steps().getLast().volume()).microlitres();
    double length = number(rule, "x2") - number(rule, "x1");
    return number(rule, "x1") + length * volume.microlitres() / end;
  }

  private static double tip(Element arrow) {
    return Double.parseDouble(arrow.getAttribute("points").split(" ", -1)[0]);
  }

  private static Schedule random(long seed) {
    var random = new Random(seed);
    int count = 1 + random.nextInt(15);
    int now = random.nextInt(count);
    int proposed = random.nextInt(count);
    int closed = proposed + 1 + random.nextInt(count);
    var steps = new ArrayList<Step>();
    long volume = 0;
    for (int i = 0; i < count; i++) {
      volume += 10L * (1 + random.nextInt(8));
      var states = new ArrayList<State>();
      if (i == now) {
        states.add(State.NOW);
      }
      if (i == proposed) {
        states.add(State.PROPOSED);
      }
      if (i >= closed) {
        states.add(State.CLOSED);
      }
      if (random.nextBoolean()) {
        states.add(State.PAST);
      }
      steps.add(step(volume, states.toArray(State[]::new)));
    }
    Volume maximum = Volume.ofMicrolitres(volume + 10L * random.nextInt(10));
    return new Schedule(steps, random.nextBoolean() ? Optional.of(maximum) : Optional.empty());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void every_step_and_mark_stands_at_its_volume_to_scale(long seed) {
    Schedule schedule = random(seed);
    Drawn drawing = draw(schedule);
    List<Element> lines = drawing.allOf("drawing-step");

    assertThat(lines).hasSameSizeAs(schedule.steps());
    for (int i = 0; i < lines.size(); i++) {
      assertAt(drawing, schedule, schedule.steps().get(i).volume(), number(lines.get(i), "x1"));
      assertThat(lines.get(i).getAttribute("x2")).isEqualTo(lines.get(i).getAttribute("x1"));
    }
    for (Step step : schedule.steps()) {
      if (step.is(State.NOW)) {
        assertAt(drawing, schedule, step.volume(), tip(first(drawing, "drawing-now")));
      }
      if (step.is(State.PROPOSED)) {
        assertAt(drawing, schedule, step.volume(), tip(first(drawing, "drawing-next")));
      }
    }
    schedule
        .maximum()
        .ifPresent(
            maximum ->
                assertAt(
                    drawing, schedule, maximum, number(first(drawing, "drawing-limit"), "x1")));
  }

  private static Element first(Drawn drawing, String className) {
    return drawing.allOf(className).getFirst();
  }

  private static void assertAt(Drawn drawing, Schedule schedule, Volume volume, double x) {
    assertThat(x).isCloseTo(expected(drawing, schedule, volume), within(WRITTEN));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void the_labels_that_matter_are_always_there(long seed) {
    Schedule schedule = random(seed);
    List<String> labels =
        draw(schedule).allOf("drawing-number").stream().map(Element::getTextContent).toList();

    for (State state : List.of(State.NOW, State.PROPOSED, State.CLOSED)) {
      schedule
          .first(state)
          .ifPresent(step -> assertThat(labels).contains(step.volume().toString()));
    }
    schedule.maximum().ifPresent(maximum -> assertThat(labels).contains(maximum.toString()));
    assertThat(labels).doesNotHaveDuplicates();
  }

  @Test
  void of_many_close_steps_some_labels_are_left_out() {
    var steps = new ArrayList<Step>();
    for (int i = 1; i <= 15; i++) {
      steps.add(step(20L * i));
    }

    Drawn drawing = draw(new Schedule(steps, Optional.empty()));

    assertThat(drawing.allOf("drawing-step")).hasSize(15);
    assertThat(drawing.allOf("drawing-number")).hasSizeBetween(3, 10);
  }

  @Test
  void each_state_has_its_own_shape() {
    Drawn drawing = draw(usual());
    Element rule = drawing.only("drawing-rule");
    double closedFrom = number(drawing.allOf("drawing-step").get(4), "x1");

    assertThat(first(drawing, "drawing-now").hasAttribute("stroke")).isFalse();
    assertThat(first(drawing, "drawing-next").getAttribute("fill")).isEqualTo("none");
    assertThat(drawing.allOf("drawing-struck")).hasSize(2 * 2);
    assertThat(drawing.allOf("drawing-past")).hasSize(2 + 1);
    assertThat(drawing.allOf("drawing-hatch"))
        .filteredOn(line -> number(line, "y1") <= number(rule, "y1"))
        .isNotEmpty()
        .allSatisfy(
            line -> {
              assertThat(number(line, "x1")).isGreaterThanOrEqualTo(closedFrom);
              assertThat(number(line, "x2")).isLessThanOrEqualTo(number(rule, "x2"));
            });
  }

  @Test
  void a_schedule_without_closed_steps_and_maximum_shows_neither() {
    Drawn drawing = draw(new Schedule(List.of(step(100), step(200, State.NOW)), Optional.empty()));

    assertThat(drawing.allOf("drawing-hatch")).isEmpty();
    assertThat(drawing.allOf("drawing-struck")).isEmpty();
    assertThat(drawing.allOf("drawing-limit")).isEmpty();
    assertThat(drawing.allOf("drawing-next")).isEmpty();
    assertThat(drawing.root().getAttribute("aria-label"))
        .doesNotContainIgnoringCase("closed")
        .doesNotContainIgnoringCase("maximum")
        .doesNotContain("Next");
  }

  @Test
  void the_words_say_what_the_drawing_shows() {
    Drawn drawing = draw(usual());

    String words = ScheduleDrawing.words(usual());

    assertThat(words)
        .contains("Steps: 0.05 mL, 0.1 mL, 0.15 mL, 0.2 mL, 0.3 mL, 0.35 mL.")
        .contains("Now, signed: 0.1 mL (10-unit mark), alprostadil 2 mcg.")
        .contains("Next, proposed, not signed: 0.15 mL (15-unit mark), alprostadil 3 mcg.")
        .contains("Injected before: 0.05 mL, 0.1 mL.")
        .contains("Closed, may not be given: 0.3 mL and above.")
        .contains("Maximum, never to be passed: 0.4 mL.");
    assertThat(drawing.root().getAttribute("role")).isEqualTo("img");
    assertThat(drawing.root().getAttribute("aria-label")).isEqualTo(words);
    assertThat(words).endsWith(drawing.key());
  }

  @Test
  void the_same_dose_again_is_marked_with_both_signs() {
    var schedule =
        new Schedule(List.of(step(100, State.NOW, State.PROPOSED), step(200)), Optional.empty());

    Drawn drawing = draw(schedule);

    assertThat(drawing.only("drawing-word").getTextContent()).isEqualTo("now and next");
    assertThat(first(drawing, "drawing-now").getAttribute("points"))
        .isNotEqualTo(first(drawing, "drawing-next").getAttribute("points"));
  }

  @Test
  void a_signed_dose_that_was_closed_since_says_so() {
    var schedule = new Schedule(List.of(step(100, State.NOW, State.CLOSED)), Optional.empty());

    assertThat(ScheduleDrawing.words(schedule))
        .contains("Now, signed: 0.1 mL (10-unit mark), alprostadil 2 mcg; it is closed.");
    assertThat(draw(schedule).allOf("drawing-struck")).hasSize(2);
  }

  @Test
  void a_schedule_that_cannot_be_is_refused() {
    Optional<Volume> none = Optional.empty();

    assertRefused(() -> new Schedule(List.of(), none));
    assertRefused(() -> new Schedule(List.of(step(200), step(100)), none));
    assertRefused(() -> new Schedule(List.of(step(100), step(100)), none));
    assertRefused(() -> new Schedule(List.of(step(100, State.CLOSED), step(200)), none));
    assertRefused(() -> new Schedule(List.of(step(100, State.NOW), step(200, State.NOW)), none));
    assertRefused(
        () -> new Schedule(List.of(step(100, State.PROPOSED), step(200, State.PROPOSED)), none));
    assertRefused(() -> new Schedule(List.of(step(110)), Optional.of(Volume.ofMicrolitres(100))));
    assertRefused(() -> step(100, State.CLOSED, State.PROPOSED));
    assertRefused(() -> step(0));
    assertRefused(() -> new Step(Volume.ofMicrolitres(10), " ", "content", Set.of()));
    assertRefused(() -> new Step(Volume.ofMicrolitres(10), "mark", "", Set.of()));
  }

  private static void assertRefused(Runnable run) {
    assertThatThrownBy(run::run)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }
}
