package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.ALPROSTADIL_20_LABEL;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.Stock;
import rungwise.dosing.supply.Freshness;
import rungwise.quantities.Volume;

/** A signature lifts a hold only as it was when it was signed. */
final class OverriddenHoldTest {

  private static final Instant NOW = Instant.parse("2026-05-01T12:00:00Z");
  private static final Fact READ = Fact.said("what it read", "this");
  private static final Stock OLD = new Stock("old vial", Freshness.OLD);

  private static boolean isLifted(GuardRule rule, Place place, Optional<Instant> until) {
    Verdict verdict = Verdict.of(rule, READ);
    var dose =
        new SignedDose(
            ml("0.25"), place, Set.of(OverriddenHold.of(verdict, until)), Optional.empty());
    return dose.less(List.of(verdict), NOW).isEmpty();
  }

  /** Signed at a question with every hold overridden that is raised there. */
  private static SignedDose signed(Question question, String volume, Place place) {
    Set<OverriddenHold> all =
        Dosing.raisedBy(question, ml(volume), place).stream()
            .map(verdict -> OverriddenHold.of(verdict, Optional.of(Instant.MAX)))
            .collect(Collectors.toSet());
    return new SignedDose(ml(volume), place, all, Optional.empty());
  }

  private static List<GuardRule> blocks(LabelWorld world, SignedDose signed) {
    return Dosing.mayInject(world.question(), Optional.of(signed)).blocks().stream()
        .map(Verdict::rule)
        .toList();
  }

  private static LabelWorld raisedOnOldStock(String vial) {
    return new LabelWorld()
        .injected("0.12", Grade.FULLER, minutes(20))
        .from(OLD)
        .injected("0.25", Grade.FULLER, minutes(20))
        .holding(LabelWorld.vial(new Stock(vial, Freshness.FRESH), ALPROSTADIL_20_LABEL));
  }

  @ParameterizedTest
  @EnumSource(GuardRule.class)
  void what_is_no_hold_is_never_lifted(GuardRule rule) {
    boolean isHold = rule.guardClass() == GuardClass.HOLD;

    assertThat(isLifted(rule, Place.CLINIC, Optional.of(Instant.MAX))).isEqualTo(isHold);
    assertThat(rule.overriding() == Overriding.NEVER).isEqualTo(!isHold);
  }

  @ParameterizedTest
  @EnumSource(
      value = GuardRule.class,
      names = {"SPACING", "WEEKLY_COUNT", "PDE5_HOURS"})
  void a_hold_of_time_is_never_lifted_for_home(GuardRule rule) {
    assertThat(isLifted(rule, Place.HOME, Optional.of(Instant.MAX))).isFalse();
    assertThat(isLifted(rule, Place.CLINIC, Optional.empty())).isTrue();
  }

  @Test
  void an_expired_screening_is_lifted_until_its_day_and_not_a_millisecond_longer() {
    GuardRule rule = GuardRule.SCREENING_EXPIRED;

    assertThat(isLifted(rule, Place.HOME, Optional.of(NOW.plusMillis(1)))).isTrue();
    assertThat(isLifted(rule, Place.HOME, Optional.of(NOW))).isFalse();
    assertThat(isLifted(rule, Place.HOME, Optional.empty())).isFalse();
  }

  /** What he once showed may be gone over a little later; what he never showed may not. */
  @Test
  void readiness_that_has_run_out_is_lifted_until_a_day_and_what_was_never_there_is_not() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.25", Grade.USABLE, minutes(40))
            .ready(EnumSet.of(Readiness.SUPERVISED_INJECTION, Readiness.EMERGENCY_PLAN))
            .around(Circumstances.NONE.withExpired(EnumSet.of(Readiness.TEACH_BACK)));
    Verdict expired = CourseGuards.askForHome(world.question()).getFirst();
    Instant until = world.question().now().plus(Duration.ofDays(30));
    var signed =
        new SignedDose(
            ml("0.25"),
            Place.HOME,
            Set.of(OverriddenHold.of(expired, Optional.of(until))),
            Optional.empty());

    assertThat(expired.rule()).isEqualTo(GuardRule.READINESS_EXPIRED);
    assertThat(blocks(world, signed)).isEmpty();
    assertThat(signed.less(List.of(expired), until.minusMillis(1))).isEmpty();
    assertThat(signed.less(List.of(expired), until)).containsExactly(expired);
    assertThat(blocks(world.ready(EnumSet.of(Readiness.EMERGENCY_PLAN)), signed))
        .containsExactly(GuardRule.HOME_NOT_READY);
    assertThat(
            blocks(
                world
                    .ready(EnumSet.of(Readiness.SUPERVISED_INJECTION))
                    .around(
                        Circumstances.NONE.withExpired(
                            EnumSet.of(Readiness.TEACH_BACK, Readiness.EMERGENCY_PLAN))),
                signed))
        .containsExactly(GuardRule.READINESS_EXPIRED);
  }

  @Test
  void nothing_is_lifted_that_read_something_else_or_of_which_no_facts_were_kept() {
    Verdict raised = Verdict.of(GuardRule.HARD_TO_MEASURE, READ);
    Verdict other = Verdict.of(GuardRule.HARD_TO_MEASURE, Fact.said("what it read", "that"));
    var old = new OverriddenHold(GuardRule.HARD_TO_MEASURE, List.of(), Optional.empty());
    var dose =
        new SignedDose(
            ml("0.25"),
            Place.HOME,
            Set.of(old, OverriddenHold.of(other, Optional.empty())),
            Optional.empty());

    assertThat(dose.less(List.of(raised, other), NOW)).containsExactly(raised);
  }

  /** The case of a home order that was signed with the spacing overridden. */
  @Test
  void half_an_hour_after_an_injection_no_signature_for_home_is_clear() {
    LabelWorld world = new LabelWorld().injected("0.25", Grade.USABLE, minutes(40));
    SignedDose signed =
        signed(world.at(START.plus(Duration.ofHours(1))).question(), "0.25", Place.HOME);
    Volume quarter = ml("0.25");
    Instant again = START.plus(Duration.ofDays(10));
    world.injectedAt(again, quarter, quarter, Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND);

    assertThat(blocks(world.at(again.plus(Duration.ofMinutes(30))), signed))
        .containsExactly(GuardRule.SPACING);
  }

  @Test
  void the_spacing_that_was_overridden_in_the_clinic_holds_again_after_the_next_injection() {
    LabelWorld world =
        new LabelWorld()
            .by(LabelSheet.label().spacing(48).protocol())
            .injected("0.25", Grade.USABLE, minutes(40));
    Instant again = START.plus(Duration.ofHours(30));
    Question soon = world.at(again).question();
    SignedDose signed = signed(soon, "0.25", Place.CLINIC);
    assertThat(Dosing.mayInject(soon, Optional.of(signed)).isClear()).isTrue();
    Volume quarter = ml("0.25");
    world.injectedAt(again, quarter, quarter, Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND);

    assertThat(blocks(world.at(again.plus(Duration.ofHours(30))), signed))
        .contains(GuardRule.SPACING);
  }

  /** Three a week again, a week later: other injections than those that were overridden. */
  @Test
  void a_full_week_that_was_overridden_says_nothing_of_the_next_full_week() {
    LabelWorld world = new LabelWorld();
    for (int count = 0; count < 3; count++) {
      world.injected("0.25", Grade.USABLE, minutes(40));
    }
    Question full = world.at(START.plus(Duration.ofDays(6))).question();
    SignedDose signed = signed(full, "0.25", Place.CLINIC);
    assertThat(Dosing.mayInject(full, Optional.of(signed)).isClear()).isTrue();
    for (int count = 0; count < 3; count++) {
      world.injected("0.25", Grade.USABLE, minutes(40));
    }

    assertThat(blocks(world.at(START.plus(Duration.ofDays(11)).plusSeconds(1)), signed))
        .containsExactly(GuardRule.WEEKLY_COUNT);
  }

  @Test
  void new_stock_is_overridden_for_one_vial_and_not_for_the_one_after_it() {
    LabelWorld second = raisedOnOldStock("second vial");
    SignedDose signed = signed(second.question(), "0.25", Place.CLINIC);

    assertThat(blocks(second, signed)).isEmpty();
    assertThat(blocks(raisedOnOldStock("third vial"), signed)).containsExactly(GuardRule.NEW_STOCK);
  }

  @Test
  void no_vial_is_overridden_for_its_own_signature() {
    LabelWorld world = new LabelWorld().injected("0.25", Grade.USABLE, minutes(40)).withoutVial();
    SignedDose with = signed(world.question(), "0.25", Place.CLINIC);
    var without = new SignedDose(ml("0.25"), Place.CLINIC, Set.of(), Optional.empty());

    assertThat(blocks(world, with)).isEmpty();
    assertThat(blocks(world, without)).containsExactly(GuardRule.NO_VIAL);
  }

  @Test
  void a_pair_that_was_overridden_is_that_pair() {
    LabelWorld world = new LabelWorld().injected("0.12", Grade.NONE, minutes(10));
    Volume eighth = ml("0.12");
    world.injectedAt(
        START.plus(Duration.ofMinutes(40)),
        eighth,
        eighth,
        Grade.USABLE,
        minutes(40),
        SimpleCauses.NONE_FOUND);
    SignedDose signed = signed(world.question(), "0.12", Place.HOME);
    assertThat(blocks(world, signed)).isEmpty();
    for (int minute = 0; minute <= 40; minute += 40) {
      world.injectedAt(
          START.plus(Duration.ofDays(20).plusMinutes(minute)),
          eighth,
          eighth,
          Grade.USABLE,
          minutes(40),
          SimpleCauses.NONE_FOUND);
    }

    assertThat(blocks(world, signed)).containsExactly(GuardRule.PAIR_NOT_CREDITED);
  }
}
