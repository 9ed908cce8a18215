package rungwise.dosing.choice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rungwise.dosing.LabelWorld.ALPROSTADIL_20_LABEL;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.SignedDose;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Source;
import rungwise.dosing.supply.Freshness;

/**
 * How a partial response is answered. The US labels go up after one of them (2.5 to 5 mcg, section
 * 2.1 of the syringe label); that a clinic waits for more of them is its own rule, without a
 * published number.
 */
final class PartialResponsesTest {

  private static LabelWorld waitingFor(int responses) {
    return new LabelWorld().by(LabelSheet.label().stepAfterPartials(responses).protocol());
  }

  private static Advice advise(LabelWorld world) {
    return Dosing.advise(world.question());
  }

  private static LabelWorld partial(LabelWorld world, String... volumes) {
    for (String volume : volumes) {
      world.injected(volume, Grade.FIRM_NOT_USABLE, minutes(20));
    }
    return world;
  }

  private static Fact counted(String words) {
    return Fact.said("partial responses in a row at this dose", words);
  }

  private static void assertWaits(LabelWorld world, String volume, String row) {
    Advice advice = advise(world);
    assertThat(advice.decision()).isEqualTo(new Decision.Repeat(ml(volume)));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.PARTIAL_AGAIN);
    assertThat(advice.reason().facts()).contains(counted(row));
  }

  private static void assertStepsUp(LabelWorld world, String volume, TitrationRule rule) {
    Advice advice = advise(world);
    assertThat(advice.decision()).isEqualTo(new Decision.StepUp(ml(volume)));
    assertThat(advice.reason().rule()).isEqualTo(rule);
  }

  @Test
  void without_a_number_and_with_one_the_first_partial_response_leads_one_step_up() {
    LabelWorld without = partial(new LabelWorld(), "0.12");
    LabelWorld with = partial(waitingFor(1), "0.12");

    assertStepsUp(without, "0.25", TitrationRule.STEP_AFTER_PARTIAL);
    assertThat(advise(with)).isEqualTo(advise(without));
    assertThat(advise(with).reason().facts()).doesNotContain(counted("1 of 1"));
  }

  @Test
  void the_first_of_two_is_repeated_and_the_second_leads_one_step_up() {
    assertWaits(partial(waitingFor(2), "0.12"), "0.12", "1 of 2");
    LabelWorld second = partial(waitingFor(2), "0.12", "0.12");
    assertStepsUp(second, "0.25", TitrationRule.STEP_AFTER_PARTIAL);
    assertThat(advise(second).reason().facts()).contains(counted("2 of 2"));
  }

  @Test
  void the_first_and_the_second_of_three_are_repeated_and_the_third_leads_one_step_up() {
    assertWaits(partial(waitingFor(3), "0.12"), "0.12", "1 of 3");
    assertWaits(partial(waitingFor(3), "0.12", "0.12"), "0.12", "2 of 3");
    assertStepsUp(
        partial(waitingFor(3), "0.12", "0.12", "0.12"), "0.25", TitrationRule.STEP_AFTER_PARTIAL);
  }

  @Test
  void no_response_and_one_that_is_not_firm_are_not_waited_for() {
    LabelWorld none = partial(waitingFor(2), "0.12").injected("0.12", Grade.NONE, minutes(0));
    LabelWorld fuller = partial(waitingFor(2), "0.12").injected("0.12", Grade.FULLER, minutes(20));

    assertStepsUp(none, "0.25", TitrationRule.STEP_AFTER_NONE);
    assertStepsUp(fuller, "0.25", TitrationRule.STEP_AFTER_FULLER);
  }

  @Test
  void one_that_is_not_firm_in_between_ends_the_row() {
    LabelWorld world = partial(waitingFor(2), "0.12").injected("0.12", Grade.FULLER, minutes(20));

    assertWaits(partial(world, "0.12"), "0.12", "1 of 2");
    assertStepsUp(partial(world, "0.12"), "0.25", TitrationRule.STEP_AFTER_PARTIAL);
  }

  @Test
  void another_volume_begins_a_new_row_and_so_does_coming_back() {
    assertWaits(partial(waitingFor(2), "0.12", "0.12", "0.25"), "0.25", "1 of 2");
    assertWaits(partial(waitingFor(2), "0.12", "0.25", "0.12"), "0.12", "1 of 2");
  }

  @Test
  void a_dose_of_another_preparation_in_between_ends_the_row() {
    LabelWorld world =
        partial(waitingFor(2), "0.12")
            .injectedWith(SamplePreparations.ALPROSTADIL_40, "0.06", minutes(20));

    assertWaits(partial(world, "0.12"), "0.12", "1 of 2");
  }

  @Test
  void a_response_that_may_have_another_cause_or_whose_end_is_not_known_is_not_counted() {
    for (SimpleCauses causes : List.of(SimpleCauses.NOT_ASKED, SimpleCauses.ONE_FOUND)) {
      LabelWorld world =
          waitingFor(2).injected("0.12", "0.12", Grade.FIRM_NOT_USABLE, minutes(20), causes);
      assertThat(advise(world).reason().rule()).isNotEqualTo(TitrationRule.PARTIAL_AGAIN);
      assertWaits(partial(world, "0.12"), "0.12", "1 of 2");
    }
    LabelWorld unknown =
        waitingFor(2).injected("0.12", Grade.FIRM_NOT_USABLE, new SoftAfter.NotKnown());
    assertThat(advise(unknown).reason().rule()).isEqualTo(TitrationRule.DURATION_NOT_KNOWN);
    assertWaits(partial(unknown, "0.12"), "0.12", "1 of 2");
  }

  @Test
  void the_second_dose_of_a_visit_is_not_counted_because_its_response_belongs_to_both() {
    LabelWorld world = partial(waitingFor(2), "0.12");
    world.injectedAt(
        LabelWorld.START.plus(Duration.ofMinutes(50)),
        ml("0.12"),
        ml("0.12"),
        Grade.FIRM_NOT_USABLE,
        minutes(20),
        SimpleCauses.NONE_FOUND);

    assertWaits(world, "0.12", "1 of 2");
    assertStepsUp(partial(world, "0.12"), "0.25", TitrationRule.STEP_AFTER_PARTIAL);
  }

  @Test
  void a_row_that_begins_with_a_second_dose_of_a_visit_is_over_after_three_repeats() {
    LabelWorld world = waitingFor(3).injected("0.12", Grade.NONE, minutes(0));
    world.injectedAt(
        LabelWorld.START.plus(Duration.ofMinutes(50)),
        ml("0.25"),
        ml("0.25"),
        Grade.FIRM_NOT_USABLE,
        minutes(20),
        SimpleCauses.NONE_FOUND);

    assertWaits(world, "0.25", "0 of 3");
    assertWaits(partial(world, "0.25"), "0.25", "1 of 3");
    assertWaits(partial(world, "0.25"), "0.25", "2 of 3");
    assertStepsUp(partial(world, "0.25"), "0.5", TitrationRule.STEP_AFTER_PARTIAL);
  }

  @Test
  void where_no_step_up_would_follow_nothing_is_repeated_instead() {
    Advice atMaximum = advise(partial(waitingFor(2), "1"));
    Advice tooLong =
        advise(partial(waitingFor(2).injected("0.25", Grade.USABLE, minutes(80)), "0.12"));

    assertThat(atMaximum.decision()).isEqualTo(new Decision.Refer());
    assertThat(atMaximum.reason().rule()).isEqualTo(TitrationRule.AT_MAXIMUM);
    assertThat(tooLong.decision()).isEqualTo(new Decision.Refer());
    assertThat(tooLong.reason().rule()).isEqualTo(TitrationRule.NEXT_STEP_TOO_LONG);
  }

  @Test
  void a_dose_drawn_too_large_is_not_repeated_so_large() {
    LabelWorld world =
        waitingFor(2)
            .injected("0.5", "0.25", Grade.FIRM_NOT_USABLE, minutes(20), SimpleCauses.NONE_FOUND);

    Advice advice = Dosing.advise(world.question());
    assertThat(advice.decision()).isEqualTo(new Decision.StepDown(ml("0.25")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.PARTIAL_AGAIN);
    assertWaits(partial(world, "0.25"), "0.25", "1 of 2");
  }

  @Test
  void the_signed_next_step_waits_for_as_many_partial_responses() {
    LabelWorld world = partial(waitingFor(2), "0.12").at(Place.HOME);
    var signed = new SignedDose(ml("0.25"), Place.HOME, Set.of(), Optional.of(ml("0.5")));

    List<Verdict> blocks =
        Dosing.mayTakeNextStep(partial(world, "0.25").question(), signed).blocks();
    assertThat(blocks).extracting(Verdict::rule).containsExactly(GuardRule.NEXT_STEP_NOT_YET);
    assertThat(blocks.getFirst().facts())
        .contains(Fact.said("partial responses in a row", "1 of 2"));
    assertThat(Dosing.mayTakeNextStep(partial(world, "0.25").question(), signed).isClear())
        .isTrue();
  }

  @Test
  void the_signed_next_step_does_not_wait_after_no_response() {
    LabelWorld world =
        partial(waitingFor(2), "0.12")
            .at(Place.HOME)
            .injected("0.25", Grade.NONE, new SoftAfter.NotKnown());
    var signed = new SignedDose(ml("0.25"), Place.HOME, Set.of(), Optional.of(ml("0.5")));

    assertThat(Dosing.mayTakeNextStep(world.question(), signed).isClear()).isTrue();
  }

  @Test
  void a_new_vial_after_older_stock_still_begins_at_what_was_proven_on_fresh_stock() {
    var old = new Stock("old vial", Freshness.OLD);
    var fresh = new Stock("new vial", Freshness.FRESH);
    LabelWorld world =
        partial(partial(waitingFor(2), "0.12", "0.12").from(old), "0.25")
            .holding(LabelWorld.vial(fresh, ALPROSTADIL_20_LABEL));

    Advice advice = advise(world);

    assertThat(advice.decision()).isEqualTo(new Decision.StepDown(ml("0.12")));
    assertThat(advice.proposal().reasons())
        .extracting(reason -> reason.rule())
        .containsExactly(TitrationRule.NEW_STOCK_RESTART, TitrationRule.PARTIAL_AGAIN);
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 4})
  void no_protocol_waits_for_nothing_or_for_more_than_three(int responses) {
    assertThatThrownBy(
            () -> new Protocol.AfterPartial(responses, new Source.Assumption("for a test")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("bug: a step up after " + responses + " responses");
  }
}
