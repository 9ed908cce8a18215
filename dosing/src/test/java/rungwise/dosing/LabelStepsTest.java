package rungwise.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import org.junit.jupiter.api.Test;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.TimeSpan;

/**
 * What the US vial and syringe label says, step by step (prescribing information, dual-chamber
 * syringe, 2.1 and 2.2), and what never bends around it.
 */
final class LabelStepsTest {

  private static Advice advise(LabelWorld world) {
    return Dosing.advise(world.question());
  }

  @Test
  void the_first_dose_is_2_5_mcg() {
    Advice advice = advise(new LabelWorld().on(Barrels.U100_0_3_HALF_UNIT));

    assertThat(advice.decision()).isEqualTo(new Decision.Start(ml("0.125")));
  }

  @Test
  void the_first_dose_of_a_spinal_cord_injury_is_1_25_mcg_rounded_down_to_a_line() {
    Advice advice =
        advise(new LabelWorld().group(AetiologyGroup.SPINAL_CORD).on(Barrels.U100_0_3_HALF_UNIT));

    assertThat(advice.decision()).isEqualTo(new Decision.Start(ml("0.06")));
  }

  @Test
  void after_a_partial_response_to_2_5_mcg_comes_5_mcg() {
    Advice advice = advise(new LabelWorld().injected("0.12", Grade.FULLER, minutes(20)));

    assertThat(advice.decision()).isEqualTo(new Decision.StepUp(ml("0.25")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.STEP_AFTER_PARTIAL);
  }

  @Test
  void after_no_response_to_2_5_mcg_comes_5_mcg_the_smaller_of_the_published_steps() {
    Advice advice = advise(new LabelWorld().injected("0.12", Grade.NONE, new SoftAfter.NotKnown()));

    assertThat(advice.decision()).isEqualTo(new Decision.StepUp(ml("0.25")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.STEP_AFTER_NONE);
  }

  @Test
  void after_5_mcg_the_steps_are_5_mcg() {
    Advice advice = advise(new LabelWorld().injected("0.25", Grade.FIRM_NOT_USABLE, minutes(30)));

    assertThat(advice.decision()).isEqualTo(new Decision.StepUp(ml("0.5")));
  }

  @Test
  void a_useful_response_within_the_hour_settles_the_dose() {
    Advice advice = advise(new LabelWorld().injected("0.25", Grade.USABLE, minutes(60)));

    assertThat(advice.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.SETTLED);
  }

  @Test
  void a_useful_response_of_over_an_hour_leads_one_step_down() {
    Advice advice = advise(new LabelWorld().injected("0.25", Grade.USABLE, minutes(61)));

    assertThat(advice.decision()).isEqualTo(new Decision.StepDown(ml("0.12")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.OVER_AN_HOUR);
  }

  @Test
  void over_an_hour_at_the_lowest_step_waits_for_a_weaker_strength() {
    Advice advice = advise(new LabelWorld().injected("0.12", Grade.USABLE, minutes(75)));

    assertThat(advice.decision()).isEqualTo(new Decision.Pause());
  }

  @Test
  void two_hours_lead_to_a_lower_dose_only_and_close_the_volume() {
    Advice advice = advise(new LabelWorld().injected("0.25", Grade.FULLY_FIRM, minutes(120)));

    assertThat(advice.decision()).isEqualTo(new Decision.StepDown(ml("0.12")));
    assertThat(advice.isAllowed(ml("0.25"))).isFalse();
    assertThat(advice.isAllowed(ml("0.5"))).isFalse();
  }

  @Test
  void two_hours_at_the_lowest_step_stop() {
    Advice advice = advise(new LabelWorld().injected("0.12", Grade.FULLY_FIRM, minutes(150)));

    assertThat(advice.decision()).isEqualTo(new Decision.Stop());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.TWO_HOURS_AT_LOWEST);
  }

  @Test
  void four_hours_stop_everything_even_when_it_was_never_usable() {
    Advice advice = advise(new LabelWorld().injected("0.25", Grade.FULLER, minutes(300)));

    assertThat(advice.decision()).isEqualTo(new Decision.Stop());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.EMERGENCY_FIRST);
    assertThat(advice.isAllowed(ml("0.12"))).isFalse();
  }

  @Test
  void after_a_review_four_hours_still_keep_the_volume_closed() {
    Advice advice =
        advise(new LabelWorld().injected("0.25", Grade.USABLE, minutes(240)).reviewed());

    assertThat(advice.decision()).isEqualTo(new Decision.StepDown(ml("0.12")));
    assertThat(advice.isAllowed(ml("0.25"))).isFalse();
  }

  @Test
  void at_the_maximum_a_poor_response_is_referred() {
    LabelWorld world = new LabelWorld().injected("1", Grade.FIRM_NOT_USABLE, minutes(30));

    Advice advice = advise(world);

    assertThat(world.ladder().last()).isEqualTo(ml("1"));
    assertThat(advice.decision()).isEqualTo(new Decision.Refer());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.AT_MAXIMUM);
  }

  @Test
  void still_firm_when_last_seen_is_read_as_without_limit() {
    var stillFirm = new SoftAfter.AtLeast(TimeSpan.ofMinutes(30));

    Advice advice = advise(new LabelWorld().injected("0.25", Grade.USABLE, stillFirm));

    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.EMERGENCY_FIRST);
  }

  @Test
  void an_interval_is_read_by_its_upper_end() {
    var soft = new SoftAfter.Between(TimeSpan.ofMinutes(30), TimeSpan.ofMinutes(121));

    Advice advice = advise(new LabelWorld().injected("0.25", Grade.USABLE, soft));

    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.TWO_HOURS_OR_MORE);
  }

  @Test
  void an_unknown_duration_after_any_firmness_never_leads_higher() {
    Advice advice =
        advise(new LabelWorld().injected("0.25", Grade.FULLER, new SoftAfter.NotKnown()));

    assertThat(advice.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
    assertThat(advice.isAllowed(ml("0.5"))).isFalse();
  }

  @Test
  void a_poor_response_is_no_reason_for_more_before_the_simple_causes_are_asked() {
    Advice notAsked =
        advise(
            new LabelWorld()
                .injected("0.12", Grade.NONE, minutes(10))
                .injected("0.25", "0.25", Grade.NONE, minutes(10), SimpleCauses.NOT_ASKED));
    Advice found =
        advise(
            new LabelWorld()
                .injected("0.12", Grade.NONE, minutes(10))
                .injected("0.25", "0.25", Grade.NONE, minutes(10), SimpleCauses.ONE_FOUND));

    assertThat(notAsked.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
    assertThat(found.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
  }

  @Test
  void a_step_that_was_too_long_is_not_proposed_again_from_below() {
    Advice advice =
        advise(
            new LabelWorld()
                .injected("0.25", Grade.USABLE, minutes(80))
                .injected("0.12", Grade.FULLER, minutes(20)));

    assertThat(advice.decision()).isEqualTo(new Decision.Refer());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.NEXT_STEP_TOO_LONG);
  }

  @Test
  void a_step_that_was_too_long_by_a_report_that_was_withdrawn_is_not_proposed_from_below() {
    Advice advice =
        advise(
            new LabelWorld()
                .injected("0.25", Grade.USABLE, minutes(80))
                .struck()
                .injected("0.12", Grade.FULLER, minutes(20)));

    assertThat(advice.decision()).isEqualTo(new Decision.Refer());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.NEXT_STEP_TOO_LONG);
  }

  @Test
  void a_contraindication_stops_and_an_unasked_one_waits() {
    Advice stopped = advise(new LabelWorld().screened(Condition.SICKLE_CELL, Answer.YES));
    Advice waiting = advise(new LabelWorld().screened(Screening.NOT_ASKED));

    assertThat(stopped.decision()).isEqualTo(new Decision.Stop());
    assertThat(waiting.decision()).isEqualTo(new Decision.Pause());
    assertThat(waiting.isAllowed(ml("0.12"))).isFalse();
  }
}
