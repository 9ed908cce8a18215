package rungwise.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.quantities.Volume;

/**
 * What was really drawn decides, not what was ordered. The volumes are those of an 1 mL U-100
 * syringe with 20 mcg per mL: steps at 0.12, 0.25, 0.5, 0.75 and 1 mL (US label: 2.5, 5, then by 5
 * mcg, rounded down to a line).
 */
final class ReallyDrawnTest {

  private static final SoftAfter NOT_KNOWN = new SoftAfter.NotKnown();

  /** 0.25 mL went in, and then this. */
  private static LabelWorld then(
      String drawn, String ordered, Grade grade, SoftAfter soft, SimpleCauses causes) {
    return new LabelWorld()
        .injected("0.12", Grade.FULLER, minutes(20))
        .injected("0.25", Grade.FULLER, minutes(20))
        .injected(drawn, ordered, grade, soft, causes);
  }

  private static Advice advise(LabelWorld world) {
    return Dosing.advise(world.question());
  }

  private static List<TitrationRule> rules(Advice advice) {
    return advice.proposal().reasons().stream().map(Reason::rule).toList();
  }

  @Test
  void a_usable_response_to_less_than_was_ordered_keeps_the_step_below_what_was_drawn() {
    Advice little =
        advise(then("0.26", "0.5", Grade.FULLY_FIRM, minutes(55), SimpleCauses.NONE_FOUND));
    Advice more = advise(then("0.4", "0.5", Grade.USABLE, minutes(45), SimpleCauses.NONE_FOUND));
    Advice least =
        advise(then("0.13", "0.5", Grade.FULLY_FIRM, minutes(40), SimpleCauses.NONE_FOUND));

    assertThat(little.decision()).isEqualTo(new Decision.StepDown(ml("0.25")));
    assertThat(rules(little))
        .containsExactly(TitrationRule.SETTLED, TitrationRule.NOT_DRAWN_AS_STEP);
    assertThat(more.decision()).isEqualTo(new Decision.StepDown(ml("0.25")));
    assertThat(least.decision()).isEqualTo(new Decision.StepDown(ml("0.12")));
  }

  @Test
  void an_unanswered_question_keeps_the_step_below_what_was_drawn() {
    Advice notAsked = advise(then("0.26", "0.5", Grade.NONE, minutes(10), SimpleCauses.NOT_ASKED));
    Advice notKnown = advise(then("0.26", "0.5", Grade.USABLE, NOT_KNOWN, SimpleCauses.NONE_FOUND));
    Advice leaked = advise(then("0.26", "0.5", Grade.NONE, NOT_KNOWN, SimpleCauses.ONE_FOUND));

    assertThat(List.of(notAsked, notKnown, leaked))
        .extracting(Advice::decision)
        .containsOnly(new Decision.StepDown(ml("0.25")));
  }

  @Test
  void the_step_that_was_drawn_is_the_same_dose_without_a_word_about_steps() {
    Advice advice = advise(then("0.25", "0.5", Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND));

    assertThat(advice.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
    assertThat(rules(advice)).containsExactly(TitrationRule.SETTLED);
  }

  @Test
  void only_a_poor_response_with_nothing_wrong_goes_back_towards_the_ordered_dose() {
    Advice advice = advise(then("0.26", "0.5", Grade.NONE, minutes(10), SimpleCauses.NONE_FOUND));
    Advice far = advise(then("0.1", "0.5", Grade.NONE, minutes(10), SimpleCauses.NONE_FOUND));

    assertThat(advice.decision()).isEqualTo(new Decision.StepUp(ml("0.5")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.LESS_THAN_ORDERED);
    assertThat(far.decision()).isEqualTo(new Decision.StepUp(ml("0.12")));
    assertThat(far.reason().rule()).isEqualTo(TitrationRule.LESS_THAN_ORDERED);
  }

  @Test
  void going_back_to_the_ordered_dose_never_passes_it() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.25", Grade.FULLER, minutes(20))
            .injected("0.12", "0.24", Grade.FULLER, minutes(20), SimpleCauses.NONE_FOUND);

    assertThat(advise(world).decision()).isEqualTo(new Decision.Repeat(ml("0.12")));
    assertThat(advise(world).reason().rule()).isEqualTo(TitrationRule.LESS_THAN_ORDERED);
  }

  @Test
  void a_draw_above_the_order_raises_nothing() {
    Advice usable = advise(then("0.5", "0.25", Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND));
    Advice tooLong =
        advise(then("0.75", "0.25", Grade.USABLE, minutes(70), SimpleCauses.NONE_FOUND));
    Advice poor = advise(then("0.75", "0.25", Grade.FULLER, minutes(9), SimpleCauses.NONE_FOUND));

    assertThat(usable.decision()).isEqualTo(new Decision.StepDown(ml("0.25")));
    assertThat(tooLong.decision()).isEqualTo(new Decision.StepDown(ml("0.25")));
    assertThat(poor.decision()).isEqualTo(new Decision.StepDown(ml("0.5")));
    assertThat(poor.reason().rule()).isEqualTo(TitrationRule.STEP_ABOVE_ORDER);
    assertThat(poor.isAllowed(ml("0.5"))).isTrue();
    assertThat(poor.isAllowed(ml("0.75"))).isFalse();
  }

  @Test
  void where_no_step_is_as_low_as_what_was_drawn_a_prescriber_decides_or_the_question_is_asked() {
    Advice usable = advise(then("0.1", "0.25", Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND));
    Advice notAsked = advise(then("0.1", "0.25", Grade.NONE, minutes(10), SimpleCauses.NOT_ASKED));

    assertThat(usable.decision()).isEqualTo(new Decision.Refer());
    assertThat(rules(usable)).containsExactly(TitrationRule.SETTLED, TitrationRule.NO_STEP_SO_LOW);
    assertThat(notAsked.decision()).isEqualTo(new Decision.Pause());
  }

  @Test
  void a_dose_that_was_never_ordered_is_judged_by_what_was_drawn() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .unordered("0.25", Grade.USABLE, minutes(40));

    Advice advice = advise(world);

    assertThat(advice.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
    assertThat(advice.reason().facts()).noneMatch(fact -> fact.what().equals("ordered"));
  }

  private static List<LabelWorld> histories() {
    var worlds = new ArrayList<LabelWorld>();
    List<Optional<String>> before =
        List.of(Optional.empty(), Optional.of("0.12"), Optional.of("0.25"));
    List<String> volumes = List.of("0.06", "0.12", "0.13", "0.25", "0.26", "0.5", "0.75", "1");
    for (Optional<String> first : before) {
      for (String drawn : volumes) {
        for (String ordered : volumes) {
          for (Grade grade : Grade.values()) {
            for (SoftAfter soft : List.of(minutes(20), minutes(61), minutes(130), NOT_KNOWN)) {
              for (SimpleCauses causes : SimpleCauses.values()) {
                var world = new LabelWorld();
                first.ifPresent(volume -> world.injected(volume, Grade.FULLER, minutes(20)));
                worlds.add(world.injected(drawn, ordered, grade, soft, causes));
              }
            }
          }
        }
      }
    }
    return worlds;
  }

  @Test
  void in_every_history_the_same_is_what_was_drawn_and_more_and_less_are_more_and_less() {
    for (LabelWorld world : histories()) {
      var question = world.question();
      Volume drawn = question.last().orElseThrow().drawn();
      Decision decision = Dosing.advise(question).decision();
      boolean isTrue =
          switch (decision) {
            case Decision.Start start -> false;
            case Decision.StepUp up ->
                up.volume().isMoreThan(drawn)
                    && question.ladder().above(drawn).equals(Optional.of(up.volume()));
            case Decision.Repeat repeat -> repeat.volume().equals(drawn);
            case Decision.StepDown down -> down.volume().isLessThan(drawn);
            case Decision.WithoutDose none -> true;
          };
      assertThat(isTrue).as("%s after %s", decision, question.history()).isTrue();
    }
  }

  @Test
  void in_every_history_more_than_was_drawn_follows_only_a_poor_response_with_nothing_wrong() {
    int raised = 0;
    for (LabelWorld world : histories()) {
      var question = world.question();
      var last = question.last().orElseThrow();
      Optional<Volume> proposed = Dosing.advise(question).decision().proposed();
      if (proposed.filter(volume -> volume.isMoreThan(last.drawn())).isPresent()) {
        raised++;
        assertThat(last.grade().isUseful()).isFalse();
        assertThat(last.causes()).isEqualTo(SimpleCauses.NONE_FOUND);
        assertThat(last.isKnownShort()).isTrue();
      }
      boolean isAboveOrder =
          last.ordered()
              .filter(ordered -> proposed.filter(ordered::isLessThan).isPresent())
              .isPresent();
      if (isAboveOrder) {
        assertThat(last.wasTooLittle()).as("%s", question.history()).isTrue();
      }
    }
    assertThat(raised).isPositive();
  }
}
