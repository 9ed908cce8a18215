package rungwise.dosing.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Grade;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrels;

/** The first dose after a change of preparation: no component above what he last tolerated. */
final class CarriedTest {

  /** A protocol in volumes, from 0.05 mL by 0.05 to 0.5 mL. */
  private static Protocol byVolume(Set<Component> components) {
    return LabelSheet.byVolume(components).protocol();
  }

  private static final Preparation WEAKER = LabelWorld.ALPROSTADIL_10;

  private static final Set<Component> THREE =
      Set.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL);

  private static LabelWorld mixture() {
    return new LabelWorld().with(SamplePreparations.THREE_DRUG_STRONGER).by(byVolume(THREE));
  }

  /** Arithmetic: 0.2 mL of 30/1/10 holds 2 mcg and 0.2 mg; 30/2/20 holds that in 0.1 mL. */
  @Test
  void the_component_that_binds_sets_the_first_volume_of_a_stronger_mixture() {
    Advice advice = Dosing.advise(mixture().after(SamplePreparations.THREE_DRUG, "0.2").question());

    assertThat(advice.decision()).isEqualTo(new Decision.Start(ml("0.1")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.FIRST_DOSE_AFTER_CHANGE);
    assertThat(advice.isAllowed(ml("0.15"))).isFalse();
    assertThat(advice.isAllowed(ml("0.05"))).isTrue();
  }

  /** Arithmetic: 0.5 mL of 17.65/0.59/5.88: least of 8.825/30, 0.295/1 and 2.94/10 mL. */
  @Test
  void a_volume_between_two_lines_is_rounded_down_to_one() {
    LabelWorld world =
        new LabelWorld()
            .with(SamplePreparations.THREE_DRUG)
            .by(byVolume(THREE))
            .on(Barrels.U100_0_5)
            .after(SamplePreparations.THREE_DRUG_BENNETT, "0.5");

    assertThat(world.question().entry()).contains(ml("0.29"));
    assertThat(world.ladder().hasRung(ml("0.29"))).isTrue();
  }

  @Test
  void a_component_he_has_never_had_starts_at_the_protocols_own_dose() {
    LabelWorld world = mixture().after(SamplePreparations.ALPROSTADIL_20, "0.5");

    assertThat(world.question().entry()).contains(ml("0.05"));
  }

  /** 0.03 mL of 20 mcg/mL holds 0.6 mcg, which is 0.03 mL of a mixture with 20 mcg/mL. */
  @Test
  void the_own_start_is_lowered_where_a_shared_component_would_exceed_what_he_tolerated() {
    LabelWorld world =
        mixture().on(Barrels.U100_0_5).after(SamplePreparations.ALPROSTADIL_20, "0.03");

    assertThat(world.question().entry()).contains(ml("0.03"));
    assertThat(world.ladder().first()).isEqualTo(ml("0.03"));
  }

  @Test
  void a_volume_too_small_to_measure_is_refused_and_says_what_to_do() {
    var proposal =
        LadderProposal.of(
            byVolume(THREE).asWrittenFor(SamplePreparations.THREE_DRUG_STRONGER),
            SamplePreparations.THREE_DRUG_STRONGER,
            Barrels.U100_0_5,
            AetiologyGroup.UNKNOWN,
            new Beginning.AtMost(new Carried(SamplePreparations.ALPROSTADIL_20, ml("0.01"))));

    assertThat(proposal.faults()).singleElement().asString().contains("cannot measure");
  }

  @Test
  void what_he_tolerated_never_lifts_the_first_dose_above_the_maximum() {
    LabelWorld world =
        new LabelWorld()
            .with(SamplePreparations.THREE_DRUG)
            .by(byVolume(THREE))
            .after(SamplePreparations.THREE_DRUG_STRONGER, "0.5");

    assertThat(world.question().entry()).contains(ml("0.5"));
  }

  /** 0.12 mL of 20 mcg/mL, then 0.1 mL of a mixture with 10 mcg/mL: 1 mcg is 0.05 mL of it. */
  @Test
  void what_was_too_long_since_binds_too_where_an_older_dose_was_tolerated() {
    LabelWorld world =
        new LabelWorld()
            .with(SamplePreparations.ALPROSTADIL_20)
            .injected("0.12", Grade.FULLER, minutes(20))
            .injectedWith(SamplePreparations.THREE_DRUG, "0.1", minutes(90));

    assertThat(world.question().entry()).contains(ml("0.05"));
    assertThat(Dosing.advise(world.question()).isAllowed(ml("0.12"))).isFalse();
    assertThat(world.question().beginning())
        .isEqualTo(
            new Beginning.AtMost(
                new Carried(
                    SamplePreparations.ALPROSTADIL_20,
                    ml("0.12"),
                    List.of(new Beginning.Held(SamplePreparations.THREE_DRUG, ml("0.1"))))));
  }

  /** By arithmetic: 0.25 mL of 20 mcg/mL holds 5 mcg, 0.1 mL of 10 mcg/mL holds 1. */
  @Test
  void it_says_what_he_tolerated_and_what_was_too_long_since() {
    var tolerated = new Carried(SamplePreparations.ALPROSTADIL_20, ml("0.25"));
    var tooLong = new Beginning.Held(LabelWorld.ALPROSTADIL_10, ml("0.1"));

    assertThat(tolerated.words()).contains("5").doesNotContain("too long");
    assertThat(
            new Carried(tolerated.from(), tolerated.tolerated(), List.of(tooLong, tooLong)).words())
        .isEqualTo(tolerated.words() + "; since then too long, or not known how long: " + tooLong);
  }

  /** The vial label does not offer 40 mcg/mL below 5 mcg, and he tolerated 10 mcg. */
  @Test
  void a_change_to_another_strength_of_the_same_single_component_is_exact() {
    LabelWorld world =
        new LabelWorld()
            .with(SamplePreparations.ALPROSTADIL_40)
            .after(SamplePreparations.ALPROSTADIL_20, "0.5");

    assertThat(world.question().entry()).contains(ml("0.25"));
    assertThat(world.ladder().first()).isEqualTo(ml("0.12"));
  }

  @Test
  void a_strength_that_is_not_offered_for_what_he_tolerated_stays_refused() {
    var proposal =
        LadderProposal.of(
            LabelWorld.protocol(),
            SamplePreparations.ALPROSTADIL_40,
            Barrels.U100_1,
            AetiologyGroup.VASCULOGENIC,
            new Beginning.AtMost(new Carried(SamplePreparations.ALPROSTADIL_20, ml("0.12"))));

    assertThat(proposal.faults()).singleElement().asString().contains("is not offered");
  }

  @Test
  void the_first_dose_after_a_change_is_a_test_in_the_clinic() {
    Advice advice = Dosing.advise(mixture().after(SamplePreparations.THREE_DRUG, "0.2").question());

    assertThat(advice.homeVerdicts())
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.FIRST_IN_CLINIC);
  }

  /** 0.12 mL of 20 mcg/mL holds 2.4 mcg, as does 0.24 mL of 10 mcg/mL. */
  @Test
  void a_dose_that_lasted_two_hours_is_closed_in_a_weaker_strength_too() {
    LabelWorld world =
        new LabelWorld()
            .with(WEAKER)
            .injectedWith(SamplePreparations.ALPROSTADIL_20, "0.12", minutes(150));

    Advice advice = Dosing.advise(world.question());

    assertThat(world.ladder().rungs()).startsWith(ml("0.23"), ml("0.25"));
    assertThat(advice.isAllowed(ml("0.25"))).isFalse();
    assertThat(advice.verdictsOn(ml("0.25")))
        .extracting(Verdict::rule)
        .contains(GuardRule.VOLUME_CLOSED);
    assertThat(advice.decision()).isEqualTo(new Decision.Refer());
  }

  @Test
  void a_mixture_that_holds_as_much_of_everything_is_closed_and_one_that_holds_less_is_not() {
    LabelWorld world = mixture().injectedWith(SamplePreparations.THREE_DRUG, "0.1", minutes(150));

    assertThat(closed(world, "0.1")).isTrue();
    assertThat(closed(world, "0.05")).isFalse();
  }

  private static boolean closed(LabelWorld world, String volume) {
    var question = world.question();
    return question.history().closing(question.preparation(), ml(volume)).isPresent();
  }

  @Test
  void over_an_hour_forbids_more_in_another_strength_and_a_short_one_there_answers_it() {
    LabelWorld world =
        new LabelWorld()
            .with(WEAKER)
            .injectedWith(SamplePreparations.ALPROSTADIL_20, "0.12", minutes(75))
            .group(AetiologyGroup.SPINAL_CORD);

    assertThat(higherForbidden(world, "0.24")).isFalse();
    assertThat(higherForbidden(world, "0.25")).isTrue();
    assertThat(higherForbidden(world.injected("0.24", Grade.FULLER, minutes(20)), "0.25"))
        .isFalse();
  }

  private static boolean higherForbidden(LabelWorld world, String volume) {
    var question = world.question();
    return question.history().forbiddingHigher(question.preparation(), ml(volume)).isPresent();
  }

  @Test
  void whoever_comes_back_to_a_preparation_begins_it_anew_in_the_clinic() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .injected("0.25", Grade.FULLER, minutes(20))
            .injected("0.5", Grade.FULLER, minutes(20))
            .after(WEAKER, "0.25");

    Advice advice = Dosing.advise(world.question());

    assertThat(advice.decision()).isEqualTo(new Decision.Start(ml("0.12")));
    assertThat(advice.isAllowed(ml("0.5"))).isFalse();
    assertThat(advice.homeVerdicts())
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.FIRST_IN_CLINIC);
  }
}
