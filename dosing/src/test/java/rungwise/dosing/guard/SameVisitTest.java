package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.protocol.Protocol;

/**
 * A second dose in the same visit. US labels: it may follow within an hour; never more than two in
 * 24 hours.
 */
final class SameVisitTest {

  private static LabelWorld after(String volume, Grade grade, SoftAfter soft, int minutesLater) {
    return new LabelWorld()
        .injectedAt(START, ml(volume), ml(volume), grade, soft, SimpleCauses.NONE_FOUND)
        .at(START.plus(Duration.ofMinutes(minutesLater)));
  }

  private static List<GuardRule> blocks(LabelWorld world, String volume, Place place) {
    var signed = new SignedDose(ml(volume), place, Set.of(), Optional.empty());
    return Dosing.mayInject(world.question(), Optional.of(signed)).blocks().stream()
        .map(Verdict::rule)
        .toList();
  }

  /** 0.12 mL did nothing, and 0.25 mL followed after 50 minutes. */
  private static LabelWorld afterTwoDoses(Grade grade, int minutes) {
    return after("0.12", Grade.NONE, minutes(20), 0)
        .injectedAt(
            START.plus(Duration.ofMinutes(50)),
            ml("0.25"),
            ml("0.25"),
            grade,
            minutes(minutes),
            SimpleCauses.NONE_FOUND);
  }

  @ParameterizedTest
  @CsvSource({
    "NONE, 20, 59, true", "NONE, 20, 60, true", "NONE, 20, 61, false",
    "FULLER, 20, 60, true", "FIRM_NOT_USABLE, 20, 60, true", "USABLE, 20, 60, false",
    "FULLY_FIRM, 20, 60, false", "FULLER, 61, 60, false"
  })
  void it_follows_a_poor_response_within_the_hour(
      Grade grade, int softAfter, int minutesLater, boolean allowed) {
    LabelWorld world = after("0.12", grade, minutes(softAfter), minutesLater);

    assertThat(blocks(world, "0.25", Place.CLINIC).isEmpty()).isEqualTo(allowed);
  }

  @Test
  void after_a_partial_response_it_is_for_the_lowest_doses_only_and_after_none_for_all() {
    assertThat(blocks(after("0.25", Grade.FULLER, minutes(20), 50), "0.5", Place.CLINIC))
        .containsExactly(GuardRule.SPACING);
    assertThat(blocks(after("0.25", Grade.NONE, minutes(20), 50), "0.5", Place.CLINIC)).isEmpty();
  }

  @Test
  void it_says_that_it_is_a_second_dose_and_what_the_first_one_was() {
    LabelWorld world = after("0.12", Grade.NONE, minutes(20), 50);
    var signed = new SignedDose(ml("0.25"), Place.CLINIC, Set.of(), Optional.empty());

    Verdict said = Dosing.mayInject(world.question(), Optional.of(signed)).verdicts().getFirst();

    assertThat(said.rule()).isEqualTo(GuardRule.SAME_VISIT);
    assertThat(said.facts()).contains(Fact.said("drawn", ml("0.12")));
  }

  @Test
  void it_is_never_given_at_home() {
    assertThat(blocks(after("0.12", Grade.NONE, minutes(20), 50), "0.25", Place.HOME))
        .containsExactly(GuardRule.SPACING);
    assertThat(
            blocks(
                new LabelWorld()
                    .at(Place.HOME)
                    .injectedAt(
                        START,
                        ml("0.12"),
                        ml("0.12"),
                        Grade.NONE,
                        minutes(20),
                        SimpleCauses.NONE_FOUND)
                    .at(START.plus(Duration.ofMinutes(50))),
                "0.25",
                Place.CLINIC))
        .containsExactly(GuardRule.SPACING);
  }

  @Test
  void it_does_not_follow_while_he_is_under_observation() {
    LabelWorld world = after("0.12", Grade.NONE, minutes(20), 50).observing(START, "0.12");

    assertThat(blocks(world, "0.25", Place.CLINIC))
        .containsExactly(GuardRule.UNDER_OBSERVATION, GuardRule.SPACING);
  }

  @Test
  void a_third_dose_waits_until_24_hours_after_the_first() {
    LabelWorld world = afterTwoDoses(Grade.NONE, 20);
    Instant day = START.plus(Duration.ofHours(24));

    assertThat(blocks(world.at(day.minusMillis(1)), "0.5", Place.CLINIC))
        .containsExactly(GuardRule.SPACING, GuardRule.THIRD_IN_24_HOURS);
    assertThat(blocks(world.at(day), "0.5", Place.CLINIC)).containsExactly(GuardRule.SPACING);
  }

  @Test
  void without_a_signed_rule_no_second_dose_follows() {
    Protocol none = LabelSheet.label().withoutSecondDose().protocol();

    assertThat(blocks(after("0.12", Grade.NONE, minutes(20), 50).by(none), "0.25", Place.CLINIC))
        .containsExactly(GuardRule.SPACING);
  }

  @Test
  void a_usable_response_to_two_doses_is_credited_to_neither_alone() {
    LabelWorld world = afterTwoDoses(Grade.USABLE, 45).at(START.plus(Duration.ofDays(3)));

    Advice advice = Dosing.advise(world.question());

    assertThat(advice.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.TWO_DOSES_TOGETHER);
    assertThat(advice.reason().facts()).contains(Fact.said("in that visit in all", ml("0.37")));
    assertThat(advice.homeVerdicts())
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.PAIR_NOT_CREDITED);
  }

  @Test
  void given_alone_afterwards_it_counts() {
    LabelWorld world =
        afterTwoDoses(Grade.USABLE, 45)
            .injectedAt(
                START.plus(Duration.ofDays(3)),
                ml("0.25"),
                ml("0.25"),
                Grade.USABLE,
                minutes(45),
                SimpleCauses.NONE_FOUND)
            .at(START.plus(Duration.ofDays(9)));

    Advice advice = Dosing.advise(world.question());

    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.SETTLED);
    assertThat(advice.homeVerdicts()).isEmpty();
  }
}
