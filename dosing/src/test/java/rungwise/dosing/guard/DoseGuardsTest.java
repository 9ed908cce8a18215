package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/** Each guard on a volume: where it speaks alone, and where it is silent. */
final class DoseGuardsTest {

  private static List<GuardRule> rules(Question question, String volume) {
    return DoseGuards.ask(question, ml(volume)).stream()
        .filter(Verdict::isBlock)
        .map(Verdict::rule)
        .toList();
  }

  private static LabelWorld after(String volume) {
    return new LabelWorld().injected(volume, Grade.FULLER, minutes(20));
  }

  @Test
  void a_step_within_every_limit_is_forbidden_by_nothing() {
    assertThat(rules(after("0.25").question(), "0.5")).isEmpty();
    assertThat(rules(after("0.25").question(), "0.25")).isEmpty();
  }

  @Test
  void a_volume_that_is_no_step_is_refused() {
    assertThat(rules(after("0.25").question(), "0.24")).containsExactly(GuardRule.NOT_A_STEP);
  }

  @Test
  void a_volume_between_two_lines_is_refused() {
    assertThat(rules(after("0.25").question(), "0.245"))
        .containsExactly(GuardRule.NOT_A_STEP, GuardRule.BETWEEN_MARKS);
  }

  @Test
  void more_than_one_step_up_is_refused_and_one_step_is_not() {
    assertThat(rules(after("0.25").question(), "0.75"))
        .containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP);
  }

  @Test
  void the_first_dose_is_the_first_step_and_no_other() {
    assertThat(rules(new LabelWorld().question(), "0.12")).isEmpty();
    assertThat(rules(new LabelWorld().question(), "0.25"))
        .containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP);
  }

  @Test
  void two_hours_close_the_volume_and_everything_above_it() {
    Question question = after("0.5").injected("0.5", Grade.USABLE, minutes(120)).question();

    assertThat(rules(question, "0.25")).isEmpty();
    assertThat(rules(question, "0.5")).containsExactly(GuardRule.VOLUME_CLOSED);
    assertThat(rules(question, "0.75"))
        .containsExactly(GuardRule.VOLUME_CLOSED, GuardRule.HIGHER_AFTER_LONG);
  }

  @Test
  void a_reopening_opens_volumes_up_to_its_own_and_no_more() {
    Question question =
        new LabelWorld()
            .injected("0.25", Grade.USABLE, minutes(130))
            .reopened("0.25")
            .injected("0.25", Grade.FULLER, minutes(30))
            .question();

    assertThat(rules(question, "0.25")).isEmpty();
    assertThat(rules(question, "0.5")).containsExactly(GuardRule.VOLUME_CLOSED);
  }

  @Test
  void a_report_written_after_the_reopening_closes_again() {
    Question question =
        new LabelWorld()
            .injected("0.25", Grade.USABLE, minutes(130))
            .reopened("0.25")
            .injected("0.25", Grade.USABLE, minutes(125))
            .question();

    assertThat(rules(question, "0.25")).containsExactly(GuardRule.VOLUME_CLOSED);
  }

  @Test
  void over_an_hour_or_not_known_forbids_every_higher_dose() {
    Question long61 = new LabelWorld().injected("0.25", Grade.USABLE, minutes(61)).question();
    Question unknown =
        new LabelWorld().injected("0.25", Grade.FULLER, new SoftAfter.NotKnown()).question();

    assertThat(rules(long61, "0.5"))
        .containsExactly(GuardRule.HIGHER_AFTER_LONG, GuardRule.SIGN_ANEW);
    assertThat(rules(unknown, "0.5")).containsExactly(GuardRule.HIGHER_AFTER_LONG);
    assertThat(rules(long61, "0.25")).containsExactly(GuardRule.SIGN_ANEW);
    assertThat(rules(long61, "0.12")).isEmpty();
  }

  @Test
  void a_later_short_response_at_that_dose_answers_an_earlier_long_one() {
    Question question =
        new LabelWorld()
            .injected("0.25", Grade.FULLER, new SoftAfter.NotKnown())
            .injected("0.25", Grade.FULLER, minutes(30))
            .question();

    assertThat(rules(question, "0.5")).isEmpty();
  }

  @Test
  void nothing_at_all_with_unknown_duration_forbids_nothing() {
    Question question =
        new LabelWorld().injected("0.25", Grade.NONE, new SoftAfter.NotKnown()).question();

    assertThat(rules(question, "0.5")).isEmpty();
  }

  @Test
  void above_the_ceiling_is_refused() {
    LabelWorld open = after("0.25");
    Ladder low =
        new Ladder(open.ladder().preparation(), Barrels.U100_1, List.of(ml("0.25")), ml("0.25"));

    assertThat(rules(open.question(low), "0.5"))
        .containsExactly(GuardRule.ABOVE_CEILING, GuardRule.NOT_A_STEP);
  }

  /** Of 20 mcg per mL, 5 mcg and 0.25 mL at most. */
  private static Preparation limited() {
    Ingredient limited =
        new Ingredient(
            Component.ALPROSTADIL,
            Concentration.parse("20 mcg/mL").orThrow(),
            Optional.of(Mass.parse("5 mcg").orThrow()));
    return new Preparation(
        new PreparationId("limited"),
        "Limited",
        new Form.Solution(),
        List.of(limited),
        ml("0.25"),
        Optional.empty());
  }

  @Test
  void more_of_a_component_than_its_limit_is_refused() {
    Preparation preparation = limited();
    var ladder = new Ladder(preparation, Barrels.U100_1, List.of(ml("0.25")), ml("0.25"));
    Question question = new LabelWorld().question(ladder);

    assertThat(DoseGuards.ask(question, ml("0.26")))
        .extracting(Verdict::rule)
        .contains(GuardRule.ABOVE_COMPONENT_LIMIT);
    assertThat(rules(question, "0.25")).isEmpty();
  }

  @Test
  void the_protocols_limit_of_a_component_holds_whatever_the_schedule_says() {
    Protocol limited = LabelSheet.label().componentLimit(Component.ALPROSTADIL, "5").protocol();
    Ladder unlimited = new LabelWorld().question().ladder();
    Question question = new LabelWorld().by(limited).question(unlimited);

    assertThat(rules(question, "0.25")).doesNotContain(GuardRule.ABOVE_COMPONENT_LIMIT);
    assertThat(rules(question, "0.26")).contains(GuardRule.ABOVE_COMPONENT_LIMIT);
  }

  @Test
  void the_schedule_ends_at_the_protocols_limit_of_a_component() {
    Protocol limited = LabelSheet.label().componentLimit(Component.ALPROSTADIL, "14").protocol();

    LadderProposal proposal =
        LadderProposal.of(
                limited,
                SamplePreparations.ALPROSTADIL_20,
                Barrels.U100_1,
                AetiologyGroup.VASCULOGENIC)
            .orThrow();

    assertThat(proposal.ladder().rungs()).containsExactly(ml("0.12"), ml("0.25"), ml("0.5"));
    assertThat(proposal.ladder().ceiling()).isEqualTo(ml("0.7"));
    assertThat(proposal.notes().getLast())
        .isEqualTo("The schedule ends at the protocol's maximum of 14 mcg of alprostadil.");
  }

  @Test
  void below_the_2_unit_mark_is_blocked_and_up_to_5_units_is_warned() {
    Question question = new LabelWorld().on(Barrels.U100_0_3_HALF_UNIT).question();

    assertThat(rules(question, "0.015")).contains(GuardRule.TOO_SMALL_TO_MEASURE);
    assertThat(rules(question, "0.02")).doesNotContain(GuardRule.TOO_SMALL_TO_MEASURE);
    assertThat(DoseGuards.ask(question, ml("0.05")))
        .extracting(Verdict::rule)
        .contains(GuardRule.SMALL_VOLUME);
    assertThat(DoseGuards.ask(question, ml("0.055")))
        .extracting(Verdict::rule)
        .doesNotContain(GuardRule.SMALL_VOLUME);
  }

  @Test
  void more_than_a_quarter_of_drawing_error_is_held() {
    Question question = new LabelWorld().question();

    assertThat(rules(question, "0.08")).contains(GuardRule.HARD_TO_MEASURE);
    assertThat(rules(question, "0.09")).doesNotContain(GuardRule.HARD_TO_MEASURE);
  }

  @Test
  void zero_is_refused_without_a_fault() {
    assertThat(DoseGuards.ask(new LabelWorld().question(), Volume.ZERO))
        .extracting(Verdict::rule)
        .contains(GuardRule.NOT_A_STEP, GuardRule.TOO_SMALL_TO_MEASURE);
  }

  /** The higher one that went in before is reached again step by step. */
  @Test
  void after_a_lower_dose_that_may_not_have_gone_in_one_step_above_it_is_the_most() {
    LabelWorld world =
        after("0.25")
            .injected("0.5", Grade.FULLER, minutes(20))
            .injected("0.12", "0.12", Grade.NONE, minutes(20), SimpleCauses.NOT_ASKED);

    assertThat(rules(world.question(), "0.25")).isEmpty();
    assertThat(DoseGuards.ask(world.question(), ml("0.5")))
        .filteredOn(Verdict::isBlock)
        .singleElement()
        .satisfies(
            verdict -> {
              assertThat(verdict.rule()).isEqualTo(GuardRule.MORE_THAN_ONE_STEP_UP);
              assertThat(verdict.facts())
                  .extracting(Fact::toString)
                  .containsExactly(
                      "last dose that went in: 0.5 mL",
                      "tried since, not known to have gone in: 0.12 mL",
                      "highest possible now: 0.25 mL");
            });
  }

  @Test
  void without_a_course_a_dose_is_held_against_the_limits_of_its_preparation() {
    var dose = new Dose(ml("0.26"), limited(), Barrels.U100_1);

    assertThat(DoseGuards.askWithoutCourse(dose))
        .extracting(Verdict::rule)
        .contains(GuardRule.ABOVE_CEILING, GuardRule.ABOVE_COMPONENT_LIMIT);
  }
}
