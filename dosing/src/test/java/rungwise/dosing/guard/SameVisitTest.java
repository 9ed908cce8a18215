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
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
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
import rungwise.dosing.known.Component;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.syringe.Barrels;

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

  @Test
  void no_second_dose_follows_one_that_was_only_told_to_be_in_the_clinic() {
    for (boolean isTold : List.of(true, false)) {
      LabelWorld world = isTold ? new LabelWorld().toldOfTheClinic() : new LabelWorld();
      world
          .injectedAt(
              START, ml("0.12"), ml("0.12"), Grade.NONE, minutes(20), SimpleCauses.NONE_FOUND)
          .at(START.plus(Duration.ofMinutes(50)));

      assertThat(blocks(world, "0.25", Place.CLINIC).contains(GuardRule.SPACING)).isEqualTo(isTold);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "NONE, 20, 59, true",
    "NONE, 20, 60, true",
    "NONE, 20, 61, false",
    "NONE, 1, 19, false",
    "NONE, 1, 20, true",
    "FULLER, 20, 60, true",
    "FIRM_NOT_USABLE, 20, 60, true",
    "USABLE, 20, 60, false",
    "FULLY_FIRM, 20, 60, false",
    "FULLER, 61, 60, false"
  })
  void it_follows_a_poor_response_within_the_hour(
      Grade grade, int softAfter, int minutesLater, boolean allowed) {
    LabelWorld world = after("0.12", grade, minutes(softAfter), minutesLater);

    assertThat(blocks(world, "0.25", Place.CLINIC).isEmpty()).isEqualTo(allowed);
  }

  @Test
  void after_a_partial_response_it_is_for_the_lowest_doses_only_and_after_less_for_all() {
    assertThat(blocks(after("0.25", Grade.FIRM_NOT_USABLE, minutes(20), 50), "0.5", Place.CLINIC))
        .containsExactly(GuardRule.SPACING);
    assertThat(blocks(after("0.25", Grade.FULLER, minutes(20), 50), "0.5", Place.CLINIC)).isEmpty();
    assertThat(blocks(after("0.25", Grade.NONE, minutes(20), 50), "0.5", Place.CLINIC)).isEmpty();
  }

  /** 2.5 to 5 mcg, whatever a protocol says: 0.13 mL holds 2.6 mcg, 0.26 mL 5.2 mcg. */
  @Test
  void after_a_partial_response_it_goes_no_further_than_the_label() {
    Protocol wider = partialUpTo("60");
    LabelWorld partial =
        after("0.125", Grade.FIRM_NOT_USABLE, minutes(20), 50).by(wider).on(Barrels.U100_1);

    assertThat(lets(partial, "0.25", "0.12", "0.25")).isTrue();
    assertThat(lets(partial, "0.26", "0.12", "0.26")).isFalse();
    assertThat(lets(partial.by(partialUpTo("2.5")), "0.25", "0.12", "0.25")).isTrue();
    assertThat(lets(partial.by(partialUpTo("2.4")), "0.25", "0.12", "0.25")).isFalse();
    assertThat(
            lets(
                after("0.13", Grade.FIRM_NOT_USABLE, minutes(20), 50).by(wider),
                "0.25",
                "0.12",
                "0.25"))
        .isFalse();
  }

  private static Protocol partialUpTo(String mcg) {
    Optional<ProtocolAmount> most = Optional.of(LabelWorld.mcg(mcg));
    return LabelSheet.label()
        .secondDose(
            rule -> new Protocol.SameVisit(rule.within(), rule.afterNone(), most, rule.source()))
        .protocol();
  }

  private static boolean lets(LabelWorld world, String volume, String... rungs) {
    var ladder =
        new Ladder(
            world.ladder().preparation(),
            Barrels.U100_1,
            Stream.of(rungs).map(LabelWorld::ml).toList(),
            ml("1"));
    return SameVisit.lets(world.question(ladder), ml(volume));
  }

  @Test
  void it_is_the_next_step_and_never_the_used_up_order() {
    LabelWorld world = after("0.25", Grade.NONE, minutes(20), 50);

    assertThat(blocks(world, "0.25", Place.CLINIC)).containsExactly(GuardRule.SPACING);
    assertThat(blocks(world, "0.12", Place.CLINIC)).containsExactly(GuardRule.SPACING);
    assertThat(blocks(world, "0.5", Place.CLINIC)).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(
      value = SimpleCauses.class,
      names = {"NOT_ASKED", "ONE_FOUND"})
  void it_follows_only_where_the_causes_were_asked_about_and_none_was_found(SimpleCauses causes) {
    LabelWorld world =
        new LabelWorld()
            .injectedAt(START, ml("0.12"), ml("0.12"), Grade.FULLER, minutes(20), causes)
            .at(START.plus(Duration.ofMinutes(50)));

    assertThat(SameVisit.next(world.question())).isEmpty();
    assertThat(blocks(world, "0.25", Place.CLINIC)).contains(GuardRule.SPACING);
  }

  /** No protocol can be written that says so; the guard asks all the same. */
  @Test
  void a_mixture_has_no_second_dose_whatever_a_protocol_says() {
    LabelWorld world =
        new LabelWorld()
            .with(SamplePreparations.THREE_DRUG)
            .injectedAt(
                START, ml("0.05"), ml("0.05"), Grade.NONE, minutes(20), SimpleCauses.NONE_FOUND)
            .at(START.plus(Duration.ofMinutes(50)));
    var ladder =
        new Ladder(
            SamplePreparations.THREE_DRUG,
            Barrels.U100_0_5,
            List.of(ml("0.05"), ml("0.1")),
            ml("0.5"));

    assertThat(SameVisit.next(world.question(ladder))).isEmpty();
    assertThat(TimeGuards.ask(world.question(ladder), ml("0.1"), Place.CLINIC))
        .extracting(Verdict::rule)
        .contains(GuardRule.SPACING);
  }

  @Test
  void no_override_of_the_spacing_opens_a_second_dose_that_the_rule_does_not_let_follow() {
    LabelWorld world = after("0.25", Grade.USABLE, minutes(20), 50);
    Set<OverriddenHold> overridden =
        TimeGuards.ask(world.question()).stream()
            .map(verdict -> OverriddenHold.of(verdict, Optional.empty()))
            .collect(Collectors.toSet());
    var signed = new SignedDose(ml("0.25"), Place.CLINIC, overridden, Optional.empty());

    assertThat(Dosing.mayInject(world.question(), Optional.of(signed)).blocks())
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.SPACING);
  }

  /** 34.8 and 40 mcg in one visit: 60 mcg is the most of the label for one dose. */
  @Test
  void the_sum_of_both_is_held_against_every_limit_and_shown_as_one_amount() {
    LabelWorld world =
        new LabelWorld()
            .with(SamplePreparations.ALPROSTADIL_40)
            .by(
                LabelSheet.label()
                    .startingAt("5")
                    .componentLimit(Component.ALPROSTADIL, "60")
                    .protocol())
            .injectedAt(
                START, ml("0.87"), ml("0.87"), Grade.NONE, minutes(20), SimpleCauses.NONE_FOUND)
            .at(START.plus(Duration.ofMinutes(50)));

    List<Verdict> said = TimeGuards.ask(world.question(), ml("1"), Place.CLINIC);

    assertThat(said)
        .filteredOn(verdict -> verdict.rule() == GuardRule.TOGETHER_ABOVE_LIMIT)
        .isNotEmpty()
        .allMatch(
            verdict ->
                verdict
                    .facts()
                    .contains(Fact.said("both together", "1.87 mL: alprostadil 74.8 mcg")));
    assertThat(SameVisit.next(world.question())).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0.37, true", "0.36, false"})
  void the_sum_may_reach_a_limit_and_not_pass_it(String ceiling, boolean allowed) {
    LabelWorld world = after("0.12", Grade.NONE, minutes(20), 50);
    var ladder =
        new Ladder(
            world.ladder().preparation(),
            Barrels.U100_1,
            List.of(ml("0.12"), ml("0.25")),
            ml(ceiling));

    assertThat(SameVisit.lets(world.question(ladder), ml("0.25"))).isEqualTo(allowed);
    assertThat(TimeGuards.ask(world.question(ladder), ml("0.25"), Place.HOME))
        .extracting(Verdict::rule)
        .contains(GuardRule.SPACING)
        .matches(rules -> rules.contains(GuardRule.TOGETHER_ABOVE_LIMIT) != allowed);
  }

  @ParameterizedTest
  @CsvSource({"7.4, true", "7.3, false"})
  void the_sum_may_reach_the_limit_of_a_component_and_not_pass_it(String most, boolean allowed) {
    Protocol limited = LabelSheet.label().componentLimit(Component.ALPROSTADIL, most).protocol();
    LabelWorld world = after("0.12", Grade.NONE, minutes(20), 50).by(limited);

    assertThat(SameVisit.lets(world.question(), ml("0.25"))).isEqualTo(allowed);
  }

  @Test
  void it_says_when_the_one_step_may_follow_while_it_is_too_early() {
    LabelWorld world = after("0.12", Grade.NONE, minutes(5), 10);

    Verdict said =
        TimeGuards.ask(world.question(), ml("0.25"), Place.CLINIC).stream()
            .filter(verdict -> verdict.rule() == GuardRule.SPACING)
            .findFirst()
            .orElseThrow();

    assertThat(said.facts())
        .contains(
            Fact.said("only step that may follow in this visit", ml("0.25")),
            new Fact.Happened("not before", START.plus(Duration.ofMinutes(20))));
    assertThat(said.clears()).isEqualTo(new Clears.At(START.plus(Duration.ofHours(24))));
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
  void a_watched_dose_that_was_said_later_to_be_at_home_stays_one_of_its_visit() {
    LabelWorld world =
        after("0.12", Grade.NONE, minutes(20), 0)
            .watchedAndSaidAtHome()
            .injectedAt(
                START.plus(Duration.ofMinutes(50)),
                ml("0.05"),
                ml("0.25"),
                Grade.USABLE,
                minutes(45),
                SimpleCauses.NONE_FOUND)
            .at(START.plus(Duration.ofDays(3)));

    assertThat(blocks(world, "0.05", Place.HOME)).contains(GuardRule.PAIR_NOT_CREDITED);
  }

  @Test
  void what_was_drawn_already_is_no_step_in_the_same_visit() {
    LabelWorld world =
        new LabelWorld()
            .injectedAt(
                START, ml("0.25"), ml("0.12"), Grade.NONE, minutes(5), SimpleCauses.NONE_FOUND)
            .at(START.plus(Duration.ofMinutes(26)));

    assertThat(blocks(world, "0.25", Place.CLINIC)).contains(GuardRule.SPACING);
    assertThat(blocks(world, "0.5", Place.CLINIC)).contains(GuardRule.SPACING);
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
