package rungwise.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.SignedDose;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.quantities.TimeSpan;

/** "May he inject now?": US label, patient counselling: 24 hours apart, at most 3 a week. */
final class MayInjectTest {

  private static final Optional<SignedDose> SIGNED = signed(Place.HOME);

  private static Optional<SignedDose> signed(Place place) {
    return Optional.of(new SignedDose(ml("0.25"), place, Set.of(), Optional.empty()));
  }

  private static LabelWorld oneInjection() {
    return new LabelWorld().injected("0.25", Grade.USABLE, minutes(40));
  }

  private static Set<GuardRule> blocks(Clearance clearance) {
    return Set.copyOf(clearance.blocks().stream().map(Verdict::rule).toList());
  }

  @Test
  void nothing_on_record_stops_him_two_months_later() {
    assertThat(Dosing.mayInject(oneInjection().question(), SIGNED).isClear()).isTrue();
  }

  @Test
  void a_minute_less_than_24_hours_is_too_early_and_24_hours_are_enough() {
    Instant clears = START.plus(Duration.ofHours(24));
    var early = oneInjection().at(clears.minus(Duration.ofMinutes(1)));
    var onTime = oneInjection().at(clears);

    assertThat(blocks(Dosing.mayInject(early.question(), SIGNED)))
        .containsExactly(GuardRule.SPACING);
    assertThat(Dosing.mayInject(early.question(), SIGNED).clearsAt()).contains(clears);
    assertThat(Dosing.mayInject(onTime.question(), SIGNED).isClear()).isTrue();
  }

  @Test
  void a_fourth_injection_in_168_hours_waits_until_the_first_leaves_the_window() {
    var world = new LabelWorld();
    for (int day = 0; day < 3; day++) {
      world.injectedAt(
          START.plus(Duration.ofDays(day * 2L)),
          ml("0.25"),
          ml("0.25"),
          Grade.USABLE,
          minutes(40),
          SimpleCauses.NONE_FOUND);
    }
    Instant clears = TimeSpan.ofHours(168).after(START);

    Clearance before =
        Dosing.mayInject(world.at(clears.minus(Duration.ofMillis(1))).question(), SIGNED);
    Clearance then = Dosing.mayInject(world.at(clears).question(), SIGNED);

    assertThat(blocks(before)).containsExactly(GuardRule.WEEKLY_COUNT);
    assertThat(before.clearsAt()).contains(clears);
    assertThat(then.isClear()).isTrue();
  }

  @Test
  void without_a_signed_dose_he_may_not() {
    Clearance clearance = Dosing.mayInject(oneInjection().question(), Optional.empty());

    assertThat(blocks(clearance)).containsExactly(GuardRule.NO_ORDER);
    assertThat(clearance.clearsAt()).isEmpty();
  }

  @Test
  void a_report_that_comes_in_later_suspends_the_signed_dose() {
    var world = oneInjection().injected("0.25", Grade.USABLE, minutes(150));

    assertThat(blocks(Dosing.mayInject(world.question(), SIGNED)))
        .containsExactly(GuardRule.VOLUME_CLOSED);
  }

  @Test
  void home_use_waits_for_teaching_supervision_and_an_emergency_plan() {
    var world = oneInjection().ready(Set.of());

    assertThat(blocks(Dosing.mayInject(world.question(), signed(Place.HOME))))
        .containsExactly(GuardRule.HOME_NOT_READY);
    assertThat(Dosing.mayInject(world.question(), signed(Place.CLINIC)).isClear()).isTrue();
  }
}
