package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.TimeSpan;

/**
 * What lasted over an hour and under two, or nobody knows how long: that dose waits for a new
 * signature. UK monograph: reduce above 1 h; the waiting is common practice, no source.
 */
final class SignAnewTest {

  private static final SoftAfter NOT_KNOWN = new SoftAfter.NotKnown();

  private static LabelWorld short012() {
    return new LabelWorld().injected("0.12", Grade.FULLER, minutes(20));
  }

  private static List<Verdict> waits(LabelWorld world, String volume) {
    return DoseGuards.ask(world.question(), ml(volume)).stream()
        .filter(verdict -> verdict.rule() == GuardRule.SIGN_ANEW)
        .toList();
  }

  private static List<GuardRule> blocks(LabelWorld world, SignedDose signed) {
    return Dosing.mayInject(world.question(), Optional.of(signed)).blocks().stream()
        .map(Verdict::rule)
        .toList();
  }

  private static SignedDose signed(LabelWorld world, String volume) {
    Set<OverriddenHold> overridden =
        waits(world, volume).stream()
            .map(verdict -> OverriddenHold.of(verdict, Optional.empty()))
            .collect(Collectors.toSet());
    return new SignedDose(ml(volume), Place.CLINIC, overridden, Optional.empty());
  }

  @ParameterizedTest
  @CsvSource({
    "USABLE, 60, false",
    "USABLE, 61, true",
    "USABLE, 119, true",
    "USABLE, 120, false",
    "NONE, 61, true",
    "FULLER, 119, true",
    "NONE, , false",
    "FULLER, , false",
    "FIRM_NOT_USABLE, , true",
    "USABLE, , true",
    "FULLY_FIRM, , true"
  })
  void it_holds_its_dose_between_one_and_two_hours_or_if_it_was_firm_and_nobody_knows(
      Grade grade, Long minutes, boolean holds) {
    SoftAfter soft =
        Optional.ofNullable(minutes).<SoftAfter>map(LabelWorld::minutes).orElse(NOT_KNOWN);
    LabelWorld world = short012().injected("0.25", grade, soft);

    assertThat(waits(world, "0.25")).hasSize(holds ? 1 : 0);
    assertThat(waits(world, "0.5")).hasSize(holds ? 1 : 0);
    assertThat(waits(world, "0.12")).isEmpty();
  }

  @Test
  void it_holds_after_a_failed_delivery_too_and_as_much_of_another_strength() {
    LabelWorld world =
        short012().injected("0.25", "0.25", Grade.USABLE, minutes(75), SimpleCauses.ONE_FOUND);

    assertThat(waits(world, "0.25")).hasSize(1);
    assertThat(world.question().history().waiting(SamplePreparations.ALPROSTADIL_40, ml("0.13")))
        .hasSize(1);
    assertThat(world.question().history().waiting(SamplePreparations.ALPROSTADIL_40, ml("0.12")))
        .isEmpty();
  }

  @Test
  void the_order_in_force_waits_until_it_is_signed_anew_and_then_for_the_next_long_one_again() {
    LabelWorld world = short012().injected("0.25", Grade.USABLE, minutes(100));
    var before = new SignedDose(ml("0.25"), Place.CLINIC, Set.of(), Optional.empty());
    assertThat(blocks(world, before)).containsExactly(GuardRule.SIGN_ANEW);

    SignedDose anew = signed(world, "0.25");
    assertThat(blocks(world, anew)).isEmpty();

    assertThat(blocks(world.injected("0.25", Grade.USABLE, minutes(100)), anew))
        .containsExactly(GuardRule.SIGN_ANEW);
  }

  @Test
  void what_was_accepted_holds_no_more_and_only_longer_or_unknown_does() {
    LabelWorld world = short012().injected("0.25", Grade.USABLE, minutes(75)).accepted("0.25", 90);
    assertThat(waits(world, "0.25")).isEmpty();

    assertThat(waits(world.injected("0.25", Grade.USABLE, minutes(90)), "0.25")).isEmpty();
    assertThat(waits(world.injected("0.25", Grade.USABLE, minutes(91)), "0.25")).hasSize(1);
    assertThat(waits(world.injected("0.25", Grade.USABLE, NOT_KNOWN), "0.25")).hasSize(2);
  }

  @Test
  void what_was_accepted_at_one_dose_says_nothing_of_another() {
    LabelWorld world =
        new LabelWorld().injected("0.12", Grade.USABLE, minutes(75)).accepted("0.25", 90);

    assertThat(waits(world, "0.12")).hasSize(1);
    assertThat(waits(world, "0.25")).hasSize(1);
  }

  @Test
  void only_more_than_an_hour_and_less_than_two_can_be_accepted() {
    LabelWorld world = new LabelWorld();

    assertThat(world.accepted("0.25", 61).accepted("0.25", 119)).isNotNull();
    assertThatThrownBy(() -> world.accepted("0.25", 60))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> world.accepted("0.25", 120))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void an_end_up_to_which_it_may_have_lasted_counts_whole() {
    var upTo91 = new SoftAfter.Between(TimeSpan.ofMinutes(30), TimeSpan.ofMinutes(91));
    LabelWorld world = short012().injected("0.25", Grade.USABLE, upTo91);

    assertThat(waits(world, "0.25")).hasSize(1);
    assertThat(waits(world.accepted("0.25", 90), "0.25")).hasSize(1);
    assertThat(waits(world.accepted("0.25", 91), "0.25")).isEmpty();
  }

  @Test
  void twice_in_a_row_not_known_pauses() {
    Advice once = Dosing.advise(short012().injected("0.25", Grade.FULLER, NOT_KNOWN).question());
    Advice twice =
        Dosing.advise(
            short012()
                .injected("0.25", Grade.USABLE, NOT_KNOWN)
                .injected("0.25", Grade.FULLER, NOT_KNOWN)
                .question());
    Advice apart =
        Dosing.advise(
            new LabelWorld()
                .injected("0.12", Grade.FULLER, NOT_KNOWN)
                .injected("0.12", Grade.FULLER, minutes(20))
                .injected("0.12", Grade.FULLER, NOT_KNOWN)
                .question());

    assertThat(once.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
    assertThat(twice.decision()).isEqualTo(new Decision.Pause());
    assertThat(twice.reason().rule()).isEqualTo(TitrationRule.NOT_KNOWN_AGAIN);
    assertThat(apart.decision()).isEqualTo(new Decision.Repeat(ml("0.12")));
  }
}
