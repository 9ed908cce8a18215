package rungwise.dosing.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rungwise.dosing.history.Grade;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.DrawingError;
import rungwise.quantities.Volume;

/** Strengths of preparations, and what an uncertain one leaves of a history. */
final class StrengthTest {

  private static final String GROUP = "all";
  private static final double PROBABILITY = 1e-8;
  private static final Population POPULATION =
      new Population(0.8, Map.of(GROUP, 0.0), 0.9, 2.2, -1.4, 1.6, 3.8, 0.6, 0.45);
  private static final List<Trial> TRIALS =
      List.of(
          new Trial(0.2, Grade.FULLER, new Lasted.NotRecorded()),
          new Trial(0.9, Grade.USABLE, new Lasted.Exactly(55)));

  private static double useful120(Requirement requirement) {
    return requirement.forecast(0.7).useful120();
  }

  @Test
  void strengths_of_one_single_component_are_exact() {
    assertThat(
            RelativeStrength.of(
                SamplePreparations.ALPROSTADIL_40, SamplePreparations.ALPROSTADIL_20))
        .isEqualTo(new RelativeStrength.Exactly(2));
    assertThat(RelativeStrength.of(SamplePreparations.THREE_DRUG, SamplePreparations.THREE_DRUG))
        .isEqualTo(new RelativeStrength.Exactly(1));
  }

  @Test
  void a_mixture_in_other_proportions_is_centred_on_the_component_that_binds() {
    // 30/1/10 to 30/2/20: phentolamine and alprostadil double (reference row C025).
    assertThat(
            RelativeStrength.of(
                SamplePreparations.THREE_DRUG_STRONGER, SamplePreparations.THREE_DRUG))
        .isEqualTo(
            new RelativeStrength.Uncertain(
                new UncertainStrength(
                    Math.log(2), RelativeStrength.DEVIATION_OF_MIXTURES.value())));
  }

  @Test
  void nothing_is_known_where_one_holds_what_the_other_lacks() {
    var unknown = new RelativeStrength.NotKnown();

    assertThat(
            RelativeStrength.of(SamplePreparations.THREE_DRUG, SamplePreparations.ALPROSTADIL_20))
        .isEqualTo(unknown);
    assertThat(RelativeStrength.of(SamplePreparations.TWO_DRUG, SamplePreparations.THREE_DRUG))
        .isEqualTo(unknown);
  }

  @Test
  void a_preparation_without_trials_says_nothing_of_the_known_ones() {
    Requirement alone = Requirement.of(POPULATION, GROUP, TRIALS);
    Requirement beside =
        Requirement.of(
            POPULATION,
            GROUP,
            TRIALS,
            List.of(new OtherPreparation(new UncertainStrength(0.3, 0.6), List.of())));

    assertThat(useful120(beside)).isCloseTo(useful120(alone), within(PROBABILITY));
  }

  @Test
  void known_and_uncertain_preparations_see_each_other_the_same_from_both_sides() {
    var other = new OtherPreparation(new UncertainStrength(0.3, 0.6), TRIALS);
    List<Trial> known = List.of(new Trial(0.5, Grade.FULLY_FIRM, new Lasted.AtLeast(60)));

    Requirement ofKnown = Requirement.of(POPULATION, GROUP, known, List.of(other));
    Requirement ofOther = Requirement.of(POPULATION, GROUP, known, List.of(), other);

    // The probability of all trials does not depend on whose requirement is integrated last.
    assertThat(ofKnown.logProbabilityOfTrials())
        .isCloseTo(ofOther.logProbabilityOfTrials(), within(PROBABILITY));
  }

  @Test
  void two_uncertain_preparations_are_both_read() {
    var strength = new UncertainStrength(0.3, 0.6);
    var long120 = List.of(new Trial(0.1, Grade.FULLY_FIRM, new Lasted.Exactly(150)));
    var wanted = new OtherPreparation(strength, List.of());

    double without = useful120(Requirement.of(POPULATION, GROUP, List.of(), List.of(), wanted));
    double with =
        useful120(
            Requirement.of(
                POPULATION,
                GROUP,
                List.of(),
                List.of(new OtherPreparation(strength, long120)),
                wanted));

    assertThat(with).isGreaterThan(without);
  }

  @Test
  void the_error_budget_of_a_syringe_is_what_a_delivery_integrates() {
    Volume volume = Volume.parseMillilitres("0.2").orThrow();
    var error = DrawingError.of(volume, Barrels.U100_0_5).orElseThrow();
    Requirement requirement = Requirement.of(POPULATION, GROUP, TRIALS);

    Delivery delivery = Delivery.of(error, 0.12);

    assertThat(delivery)
        .isEqualTo(
            new Delivery(error.readingPercent() / 100, error.tolerancePercent() / 100, 0.1, 0.12));
    assertThat(new Delivery(0, 0, 0, 0).forecast(requirement, 0.7).useful120())
        .isCloseTo(useful120(requirement), within(1e-14));
    assertThat(delivery.forecast(requirement, 0.7).useful()).isBetween(0.0, 1.0);
  }

  @Test
  void what_no_data_can_be_is_refused() {
    assertThatThrownBy(() -> new UncertainStrength(0, 0)).hasMessageContaining("deviation of 0.0");
    assertThatThrownBy(() -> new Delivery(0.6, 0.5, 0, 0))
        .hasMessageStartingWith("bug: a delivery");
    assertThatThrownBy(() -> new Given(Volume.ofMicrolitres(1), 1.3, 1))
        .hasMessageContaining("potency 1.3");
    assertThatThrownBy(() -> new Trial(0, Grade.USABLE, new Lasted.Exactly(0)))
        .hasMessageStartingWith("bug: a trial");
    assertThatThrownBy(() -> Requirement.of(POPULATION, "other", List.of()))
        .hasMessage("bug: no group other");
  }
}
