package rungwise.dosing.history;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.ALPROSTADIL_20_LABEL;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.NewStock;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.Freshness;

/**
 * Only a dose that went in, from a vial whose label is on record, proves anything. It only grants:
 * for stopping, closing and holding every duration counts.
 */
final class EvidenceTest {

  private static final SoftAfter NOT_KNOWN = new SoftAfter.NotKnown();
  private static final Stock NEW = new Stock("new vial", Freshness.FRESH);

  private static Injection only(LabelWorld world) {
    return world.question().last().orElseThrow();
  }

  private static List<GuardRule> hardStops(LabelWorld world, String volume) {
    return DoseGuards.ask(world.question(), ml(volume)).stream()
        .filter(Verdict::isHardStop)
        .map(Verdict::rule)
        .toList();
  }

  private static LabelWorld leaked(LabelWorld world, String volume) {
    return world.injected(volume, volume, Grade.NONE, NOT_KNOWN, SimpleCauses.ONE_FOUND);
  }

  @ParameterizedTest
  @CsvSource({
    "NONE, , NONE_FOUND, true",
    "NONE, , NOT_ASKED, false",
    "NONE, 20, NOT_ASKED, false",
    "NONE, , ONE_FOUND, false",
    "FULLER, 20, NOT_ASKED, true",
    "FULLER, 20, ONE_FOUND, false",
    "FULLER, 60, NONE_FOUND, true",
    "FULLER, 61, NONE_FOUND, false",
    "FULLER, , NONE_FOUND, false",
    "FULLER, , NOT_ASKED, false",
    "FULLY_FIRM, 60, NOT_ASKED, true"
  })
  void a_dose_is_proven_short_if_it_went_in_and_was_known_to_be_over_in_time(
      Grade grade, Long minutes, SimpleCauses causes, boolean proven) {
    SoftAfter soft =
        Optional.ofNullable(minutes).<SoftAfter>map(LabelWorld::minutes).orElse(NOT_KNOWN);

    LabelWorld world = new LabelWorld().injected("0.12", "0.12", grade, soft, causes);

    assertThat(only(world).provesShort()).isEqualTo(proven);
  }

  @Test
  void a_dose_from_a_vial_that_nobody_wrote_down_proves_nothing() {
    LabelWorld world =
        new LabelWorld().from(Stock.NOT_RECORDED).injected("0.12", Grade.FULLER, minutes(20));

    assertThat(only(world).wentIn()).isTrue();
    assertThat(only(world).provesShort()).isFalse();
  }

  @Test
  void a_leaked_dose_was_not_tolerated_by_another_strength() {
    LabelWorld world =
        leaked(new LabelWorld().injected("0.25", Grade.FULLER, minutes(30)), "0.75")
            .with(SamplePreparations.ALPROSTADIL_40);

    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.Start(ml("0.12")));
  }

  @Test
  void a_leaked_dose_is_no_answer_to_a_long_erection() {
    LabelWorld tooLong =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .injected("0.25", Grade.FULLY_FIRM, minutes(90));

    assertThat(hardStops(leaked(tooLong, "0.25"), "0.5"))
        .containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP, GuardRule.HIGHER_AFTER_LONG);
    assertThat(hardStops(tooLong.injected("0.25", Grade.FULLER, minutes(20)), "0.5")).isEmpty();
  }

  @Test
  void a_leaked_dose_in_the_clinic_does_not_open_home() {
    LabelWorld leaked = leaked(new LabelWorld(), "0.12");

    assertThat(CourseGuards.askForHome(leaked.question()))
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.FIRST_IN_CLINIC);
    assertThat(
            CourseGuards.askForHome(leaked.injected("0.12", Grade.FULLER, minutes(20)).question()))
        .isEmpty();
  }

  @Test
  void a_dose_that_was_only_told_to_be_in_the_clinic_does_not_open_home() {
    LabelWorld told = new LabelWorld().toldOfTheClinic();
    told.injected("0.12", Grade.FULLER, minutes(20));

    assertThat(CourseGuards.askForHome(told.question()))
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.FIRST_IN_CLINIC);
    assertThat(
            CourseGuards.askForHome(
                told.at(Place.CLINIC).injected("0.12", Grade.FULLER, minutes(20)).question()))
        .isEmpty();
  }

  @Test
  void a_dose_that_was_only_told_to_be_in_the_clinic_is_no_test_after_an_emergency() {
    LabelWorld emergency =
        new LabelWorld().injected("0.12", Grade.FULLER, minutes(20)).toldOfTheClinic();
    emergency.injected("0.12", Grade.FULLY_FIRM, minutes(300)).reviewed();
    emergency.injected("0.12", Grade.FULLER, minutes(20));
    Injection reviewed = emergency.question().history().lastReviewed().orElseThrow();

    assertThat(emergency.question().history().isTestedSince(reviewed)).isFalse();

    emergency.at(Place.CLINIC).injected("0.12", Grade.FULLER, minutes(20));
    assertThat(emergency.question().history().isTestedSince(reviewed)).isTrue();
  }

  @Test
  void a_leaked_dose_from_fresh_stock_does_not_prove_the_dose_of_a_new_vial() {
    LabelWorld world =
        leaked(new LabelWorld().injected("0.12", Grade.FULLER, minutes(20)), "0.25")
            .from(new Stock("old vial", Freshness.OLD))
            .injected("0.25", Grade.FULLER, minutes(20))
            .holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(NewStock.restartAt(world.question())).contains(ml("0.12"));
  }

  @Test
  void a_leaked_dose_that_lasted_long_still_closes_and_stops() {
    LabelWorld closed =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .injected("0.25", "0.25", Grade.NONE, minutes(120), SimpleCauses.ONE_FOUND);
    LabelWorld stopped =
        new LabelWorld().injected("0.12", "0.12", Grade.NONE, minutes(240), SimpleCauses.ONE_FOUND);

    assertThat(hardStops(closed, "0.25")).containsExactly(GuardRule.VOLUME_CLOSED);
    assertThat(Dosing.advise(stopped.question()).reason().rule())
        .isEqualTo(TitrationRule.EMERGENCY_FIRST);
  }

  @Test
  void one_rung_up_is_counted_from_the_last_dose_that_went_in() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .injected("0.25", Grade.FULLER, minutes(20));

    LabelWorld leakedHigh = leaked(world, "0.5");
    Advice advice = Dosing.advise(leakedHigh.question());
    assertThat(advice.decision()).isEqualTo(new Decision.Repeat(ml("0.5")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.CAUSE_FOUND);
    assertThat(hardStops(leakedHigh, "0.75")).containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP);

    LabelWorld twice = leaked(leakedHigh, "0.75");
    assertThat(hardStops(twice, "0.5")).isEmpty();
    assertThat(hardStops(twice, "0.75")).containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP);
  }

  @Test
  void after_a_failed_dose_nothing_above_it_and_the_last_that_went_in_is_possible() {
    LabelWorld same =
        leaked(
            new LabelWorld()
                .injected("0.12", Grade.FULLER, minutes(20))
                .injected("0.25", Grade.FULLER, minutes(20)),
            "0.25");
    LabelWorld lower =
        leaked(
            new LabelWorld()
                .injected("0.12", Grade.FULLER, minutes(20))
                .injected("0.25", Grade.FULLER, minutes(20)),
            "0.12");

    assertThat(hardStops(same, "0.25")).isEmpty();
    assertThat(hardStops(same, "0.5")).containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP);
    assertThat(hardStops(lower, "0.25")).isEmpty();
    assertThat(hardStops(lower, "0.5")).containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP);
  }

  @Test
  void a_failed_first_dose_is_given_again_and_no_other() {
    LabelWorld world = leaked(new LabelWorld(), "0.12");

    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.Repeat(ml("0.12")));
    assertThat(hardStops(world, "0.25")).containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP);
  }

  @Test
  void two_injections_at_one_instant_are_a_pair_in_the_order_of_their_entries() {
    LabelWorld world =
        new LabelWorld()
            .at(Place.HOME)
            .injectedAt(
                START, ml("0.12"), ml("0.12"), Grade.FULLER, minutes(20), SimpleCauses.NONE_FOUND)
            .injectedAt(
                START, ml("0.12"), ml("0.12"), Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND);

    Question question = world.question();

    assertThat(question.history().sameStayBefore(question.last().orElseThrow())).hasSize(1);
    assertThat(Dosing.advise(question).reason().rule()).isEqualTo(TitrationRule.TWO_DOSES_TOGETHER);
    assertThat(CourseGuards.askForHome(question))
        .extracting(Verdict::rule)
        .contains(GuardRule.PAIR_NOT_CREDITED);
    assertThat(question.history().sameStayBefore(question.history().injections().getFirst()))
        .isEmpty();
  }

  @Test
  void doses_of_one_stay_in_the_clinic_are_less_than_a_day_apart() {
    assertThat(pairAfter(Duration.ofHours(24).minusMillis(1))).isTrue();
    assertThat(pairAfter(Duration.ofHours(24))).isFalse();
  }

  private static boolean pairAfter(Duration apart) {
    Question question =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .injectedAt(
                START.plus(apart),
                ml("0.12"),
                ml("0.12"),
                Grade.USABLE,
                minutes(40),
                SimpleCauses.NONE_FOUND)
            .question();
    return !question.history().sameStayBefore(question.last().orElseThrow()).isEmpty();
  }
}
