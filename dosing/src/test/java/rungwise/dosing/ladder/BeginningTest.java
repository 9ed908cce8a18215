package rungwise.dosing.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.ALPROSTADIL_10;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.SignedDose;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrels;

/**
 * What the first dose after a change of preparation rests on: what he tolerated; as for a new man
 * where nothing went in and nothing was long; else nothing that is proposed.
 */
final class BeginningTest {

  private static final SoftAfter NOT_KNOWN = new SoftAfter.NotKnown();
  private static final Set<Component> THREE =
      Set.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL);

  private static final Ladder SIGNED_OF_10 =
      new Ladder(
          ALPROSTADIL_10,
          Barrels.U100_1,
          List.of(ml("0.12"), ml("0.25"), ml("0.5"), ml("0.75"), ml("1")),
          ml("1"));

  /** Of 20 mcg per mL, and then the weaker preparation. */
  private static LabelWorld of20(LabelWorld world) {
    return world.with(ALPROSTADIL_10);
  }

  private static List<GuardRule> blocks(LabelWorld world, String volume) {
    return DoseGuards.ask(world.question(SIGNED_OF_10), ml(volume)).stream()
        .filter(Verdict::isBlock)
        .map(Verdict::rule)
        .toList();
  }

  private static List<TitrationRule> rules(Advice advice) {
    return advice.proposal().reasons().stream().map(Reason::rule).toList();
  }

  @Test
  void where_nothing_went_in_and_nothing_was_long_it_begins_as_for_a_new_man() {
    LabelWorld world =
        of20(
            new LabelWorld().injected("0.5", "0.5", Grade.NONE, NOT_KNOWN, SimpleCauses.ONE_FOUND));

    assertThat(world.question().beginning()).isEqualTo(new Beginning.AsNew());
    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.Start(ml("0.25")));
    assertThat(Dosing.advise(world.question()).homeVerdicts())
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.FIRST_IN_CLINIC);
  }

  @Test
  void where_something_was_long_and_nothing_tolerated_no_volume_is_proposed() {
    for (SoftAfter tooLong : List.of(minutes(61), minutes(119), NOT_KNOWN)) {
      LabelWorld world = of20(new LabelWorld().injected("0.25", Grade.USABLE, tooLong));

      Advice advice = Dosing.advise(world.question());

      assertThat(advice.decision()).isEqualTo(new Decision.Refer());
      assertThat(rules(advice)).containsExactly(TitrationRule.NOTHING_TOLERATED_BEFORE);
    }
  }

  /**
   * 0.25 mL of 20 mcg per mL holds 5 mcg, as does 0.5 mL of 10. What a new man begins with is less,
   * and a long erection never opens more than he may have.
   */
  @Test
  void the_lowest_step_is_none_that_may_be_signed_where_it_holds_what_was_too_long() {
    Ladder ladder = new LabelWorld().ladder();

    assertThat(ladder.first()).isEqualTo(ml("0.12"));
    assertThat(tooLong("0.12").highestOf(ladder)).isEmpty();
    assertThat(tooLong("0.25").highestOf(ladder)).contains(ml("0.12"));
  }

  private static Beginning tooLong(String volume) {
    return new Beginning.BelowTooLong(
        List.of(new Beginning.Held(SamplePreparations.ALPROSTADIL_20, ml(volume))));
  }

  @Test
  void a_prescriber_may_sign_less_of_everything_in_the_clinic_with_a_reason() {
    LabelWorld world = of20(new LabelWorld().injected("0.25", Grade.USABLE, minutes(90)));

    assertThat(world.ladder().first()).isEqualTo(ml("0.25"));
    assertThat(blocks(world, "0.12")).containsExactly(GuardRule.FIRST_AFTER_TOO_LONG);
    assertThat(blocks(world, "0.5")).contains(GuardRule.NO_FIRST_DOSE);
    assertThat(Dosing.advise(world.question()).isAllowed(ml("0.25"))).isTrue();
    assertThat(Dosing.advise(world.question()).isAllowed(ml("0.5"))).isFalse();
  }

  @Test
  void the_smallest_of_several_that_were_too_long_decides() {
    LabelWorld world =
        of20(
            new LabelWorld()
                .injected("0.12", Grade.USABLE, minutes(61))
                .injected("0.25", Grade.USABLE, minutes(90)));

    assertThat(world.question().beginning().highestOf(SIGNED_OF_10)).contains(ml("0.12"));
    assertThat(world.ladder().rungs()).contains(ml("0.23"));
  }

  @Test
  void a_component_that_he_never_had_is_never_below_what_was_too_long() {
    var proposal =
        LadderProposal.of(
            byVolume(),
            SamplePreparations.THREE_DRUG,
            Barrels.U100_0_5,
            AetiologyGroup.UNKNOWN,
            new LabelWorld()
                .injected("0.25", Grade.USABLE, minutes(90))
                .with(ALPROSTADIL_10)
                .question(SIGNED_OF_10)
                .history()
                .beginning(SamplePreparations.THREE_DRUG));

    assertThat(proposal.faults()).singleElement().asString().contains("holds less of everything");
  }

  private static Protocol byVolume() {
    return LabelSheet.byVolume(THREE).protocol().asWrittenFor(SamplePreparations.THREE_DRUG);
  }

  @Test
  void every_component_of_a_mixture_stays_below_the_smallest_that_held_it() {
    var tooLong =
        new Beginning.BelowTooLong(
            List.of(
                new Beginning.Held(SamplePreparations.THREE_DRUG, ml("0.2")),
                new Beginning.Held(SamplePreparations.ALPROSTADIL_20, ml("0.05"))));

    assertThat(tooLong.allows(ml("0.09"), SamplePreparations.THREE_DRUG)).isTrue();
    assertThat(tooLong.allows(ml("0.1"), SamplePreparations.THREE_DRUG)).isFalse();
    assertThat(tooLong.highestMark(SamplePreparations.THREE_DRUG, Barrels.U100_0_5))
        .contains(ml("0.09"));
  }

  @Test
  void what_is_too_little_to_measure_is_refused_with_what_to_do() {
    var tooLong =
        new Beginning.BelowTooLong(
            List.of(new Beginning.Held(SamplePreparations.ALPROSTADIL_20, ml("0.02"))));

    assertThat(tooLong.highestMark(SamplePreparations.ALPROSTADIL_20, Barrels.U100_1)).isEmpty();
    assertThat(tooLong.highestMark(ALPROSTADIL_10, Barrels.U100_1)).contains(ml("0.03"));
  }

  @Test
  void a_late_report_of_the_preparation_before_suspends_a_signed_first_dose() {
    var signed = new SignedDose(ml("0.5"), Place.CLINIC, Set.of(), Optional.empty());
    LabelWorld before =
        of20(
            new LabelWorld()
                .injected("0.12", Grade.FULLER, minutes(20))
                .injected("0.25", Grade.FULLER, minutes(30)));
    assertThat(blocks(before, "0.5")).isEmpty();
    assertThat(Dosing.mayInject(before.question(SIGNED_OF_10), Optional.of(signed)).blocks())
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.VIAL_DIFFERS);

    for (SoftAfter late : List.of(minutes(90), minutes(119), NOT_KNOWN)) {
      LabelWorld after =
          of20(
              new LabelWorld()
                  .injected("0.12", Grade.FULLER, minutes(20))
                  .injected("0.25", Grade.FULLER, late));

      assertThat(Dosing.mayInject(after.question(SIGNED_OF_10), Optional.of(signed)).blocks())
          .extracting(Verdict::rule)
          .contains(GuardRule.MORE_THAN_ONE_STEP_UP);
    }
  }

  @Test
  void where_no_step_holds_as_little_as_he_tolerated_every_step_is_stopped() {
    LabelWorld world = of20(new LabelWorld().injected("0.05", Grade.FULLER, minutes(20)));

    Advice advice = Dosing.advise(world.question(SIGNED_OF_10));

    assertThat(advice.decision()).isEqualTo(new Decision.Refer());
    assertThat(rules(advice)).contains(TitrationRule.NO_STEP_AS_TOLERATED);
    assertThat(blocks(world, "0.12")).containsExactly(GuardRule.NO_FIRST_DOSE);
  }

  @Test
  void what_was_tolerated_before_a_preparation_that_leaked_still_carries_over() {
    LabelWorld world =
        of20(
            new LabelWorld()
                .injected("0.12", Grade.FULLER, minutes(20))
                .with(SamplePreparations.ALPROSTADIL_40)
                .injected("0.25", "0.25", Grade.NONE, NOT_KNOWN, SimpleCauses.ONE_FOUND));

    assertThat(world.question().entry()).contains(ml("0.24"));
  }

  /** 10 mcg would be 1 mL of 10 mcg per mL, more than a syringe of 0.5 mL holds. */
  @Test
  void more_than_the_syringe_holds_is_its_last_line() {
    LabelWorld world =
        new LabelWorld()
            .with(ALPROSTADIL_10)
            .on(Barrels.U100_0_5)
            .injectedWith(SamplePreparations.ALPROSTADIL_20, "0.5", minutes(20));

    assertThat(world.question().entry()).contains(ml("0.5"));
  }
}
