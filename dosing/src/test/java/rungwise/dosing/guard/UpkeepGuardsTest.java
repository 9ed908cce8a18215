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
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolOptions;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * Examinations, a long time without an injection, recalls and later versions. The protocol asks for
 * an examination every 3 months (US labels) and says nothing of lapse and grace.
 */
final class UpkeepGuardsTest {

  private static final Instant YEAR_LATER = Instant.parse("2027-03-02T20:00:00Z");

  private static LabelWorld usual() {
    return new LabelWorld().injected("0.25", Grade.USABLE, minutes(40));
  }

  private static List<GuardRule> blocks(LabelWorld world, String volume, Place place) {
    return Dosing.raisedBy(world.question(), ml(volume), place).stream()
        .filter(Verdict::isBlock)
        .map(Verdict::rule)
        .toList();
  }

  private static LabelWorld after(Protocol newer) {
    return usual().around(Circumstances.NONE.withNewer(List.of(newer)));
  }

  private static Protocol later(int spacing, int inSevenDays, ProtocolOptions more) {
    Protocol label = LabelWorld.protocol();
    Source source = label.ceiling().source();
    return later(
        label
            .limits()
            .with(CountedOption.SPACING_HOURS, new Sourced<>(spacing, source))
            .with(CountedOption.IN_SEVEN_DAYS, new Sourced<>(inSevenDays, source)),
        more);
  }

  private static Protocol later(Protocol.Limits limits, ProtocolOptions more) {
    Protocol label = LabelWorld.protocol();
    return new Protocol(
        label.name(),
        2,
        label.title(),
        /* sample= */ false,
        label.components(),
        label.starts(),
        label.steps(),
        label.strengths(),
        label.ceiling(),
        limits,
        more);
  }

  @Test
  void an_examination_that_is_due_holds_a_higher_dose_and_no_other() {
    Instant due = Instant.parse("2026-06-02T20:00:00Z");
    LabelWorld world = usual().examined(Optional.of(START)).at(due);

    assertThat(blocks(world, "0.5", Place.CLINIC)).containsExactly(GuardRule.EXAMINATION_OVERDUE);
    assertThat(blocks(world, "0.25", Place.CLINIC)).isEmpty();
    assertThat(blocks(world, "0.12", Place.CLINIC)).isEmpty();
    assertThat(blocks(world.at(due.minusMillis(1)), "0.5", Place.CLINIC)).isEmpty();
  }

  /**
   * Neither what was felt before it nor the start of the course says anything of the time since.
   */
  @Test
  void after_an_emergency_an_examination_is_due_at_once() {
    for (Optional<Instant> examined : List.of(Optional.<Instant>empty(), Optional.of(START))) {
      LabelWorld world =
          new LabelWorld()
              .examined(Optional.empty())
              .around(
                  new Circumstances(
                      Optional.of(START),
                      examined,
                      Optional.empty(),
                      /* recalled= */ false,
                      List.of(),
                      Optional.empty(),
                      List.of(),
                      Set.of(),
                      List.of(),
                      Optional.empty(),
                      Optional.empty()))
              .injected("0.25", Grade.FULLY_FIRM, minutes(20))
              .injected("0.5", Grade.FULLY_FIRM, minutes(240))
              .reviewed()
              .injected("0.12", Grade.FULLER, minutes(20));

      assertThat(DoseGuards.ask(world.question(), ml("0.25")))
          .extracting(Verdict::rule)
          .contains(GuardRule.EXAMINATION_OVERDUE);
      assertThat(DoseGuards.ask(world.question(), ml("0.12")))
          .extracting(Verdict::rule)
          .doesNotContain(GuardRule.EXAMINATION_OVERDUE);
    }
  }

  @Test
  void after_the_grace_it_holds_every_dose_at_home() {
    Instant due = Instant.parse("2026-06-02T20:00:00Z");
    Protocol label = LabelWorld.protocol();
    Protocol graced =
        later(
            label
                .limits()
                .with(CountedOption.GRACE_DAYS, new Sourced<>(30, label.ceiling().source())),
            label.more());
    Instant end = due.plus(Duration.ofDays(30));
    LabelWorld world = usual().by(graced).examined(Optional.of(START));

    assertThat(blocks(world.at(end.minusMillis(1)), "0.12", Place.HOME)).isEmpty();
    assertThat(blocks(world.at(end), "0.12", Place.HOME))
        .containsExactly(GuardRule.EXAMINATION_LONG_OVERDUE);
    assertThat(blocks(usual().examined(Optional.of(START)).at(due), "0.12", Place.HOME))
        .containsExactly(GuardRule.EXAMINATION_LONG_OVERDUE);
  }

  private static LabelWorld renewed(Instant now) {
    return usual().screened(Screening.all(Answer.NO, now)).at(now);
  }

  @Test
  void after_a_year_without_an_injection_a_dose_in_the_clinic_comes_first() {
    assertThat(blocks(renewed(YEAR_LATER), "0.25", Place.HOME)).containsExactly(GuardRule.LAPSED);
    assertThat(blocks(renewed(YEAR_LATER.minusMillis(1)), "0.25", Place.HOME)).isEmpty();
    assertThat(blocks(renewed(YEAR_LATER), "0.25", Place.CLINIC)).isEmpty();
  }

  /** A dose at home that nobody let him take is no test. */
  @Test
  void a_dose_at_home_after_a_lapse_does_not_end_it_and_one_in_the_clinic_does() {
    Volume quarter = ml("0.25");
    Instant soon = YEAR_LATER.plus(Duration.ofDays(2));
    for (Place place : Place.values()) {
      LabelWorld world = renewed(soon).at(place);
      world.injectedAt(
          YEAR_LATER, quarter, quarter, Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND);

      assertThat(blocks(world, "0.25", Place.HOME).contains(GuardRule.LAPSED))
          .as(place.words())
          .isEqualTo(place == Place.HOME);
    }
  }

  /** Only what was watched in the clinic is a dose in the clinic again. */
  @Test
  void a_dose_after_a_lapse_that_was_only_told_to_be_in_the_clinic_does_not_end_it() {
    Volume quarter = ml("0.25");
    LabelWorld world = renewed(YEAR_LATER.plus(Duration.ofDays(2))).toldOfTheClinic();
    world.injectedAt(
        YEAR_LATER, quarter, quarter, Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND);

    assertThat(blocks(world, "0.25", Place.HOME)).contains(GuardRule.LAPSED);
  }

  @Test
  void by_a_record_that_was_changed_nothing_is_injected_and_no_dose_is_proposed() {
    LabelWorld world = usual().around(Circumstances.NONE.withFlaws(List.of("entry 3 was changed")));

    assertThat(blocks(world, "0.12", Place.CLINIC)).containsExactly(GuardRule.RECORD_NOT_SOUND);
    var advice = Dosing.advise(world.question());
    assertThat(advice.decision()).isEqualTo(new Decision.Pause());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.RECORD_FIRST);
  }

  @Test
  void while_it_is_not_known_what_time_it_is_nothing_is_injected_and_no_dose_is_proposed() {
    LabelWorld world = usual().around(Circumstances.NONE.withoutClock("it jumped by 1 day"));

    assertThat(blocks(world, "0.12", Place.CLINIC)).containsExactly(GuardRule.CLOCK_NOT_KNOWN);
    var advice = Dosing.advise(world.question());
    assertThat(advice.decision()).isEqualTo(new Decision.Pause());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.CLOCK_FIRST);
  }

  @Test
  void nothing_is_injected_or_proposed_while_it_is_paused_or_after_it_has_ended() {
    for (Circumstances.Halt.Kind kind : Circumstances.Halt.Kind.values()) {
      LabelWorld world =
          usual().around(Circumstances.NONE.withHalt(new Circumstances.Halt(kind, START)));
      boolean isPaused = kind == Circumstances.Halt.Kind.PAUSED;

      for (Place place : Place.values()) {
        assertThat(blocks(world, "0.12", place))
            .contains(isPaused ? GuardRule.COURSE_PAUSED : GuardRule.COURSE_ENDED);
      }
      var advice = Dosing.advise(world.question());
      assertThat(advice.decision()).isEqualTo(new Decision.Pause());
      assertThat(advice.reason().rule())
          .isEqualTo(isPaused ? TitrationRule.RESUME_FIRST : TitrationRule.ENDED);
    }
  }

  @Test
  void a_recalled_preparation_is_injected_nowhere_and_no_dose_of_it_is_proposed() {
    LabelWorld world = usual().around(Circumstances.NONE.withRecall());

    assertThat(blocks(world, "0.12", Place.CLINIC)).containsExactly(GuardRule.RECALLED);
    var advice = Dosing.advise(world.question());
    assertThat(advice.decision()).isEqualTo(new Decision.Pause());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.RECALL_FIRST);
  }

  @Test
  void a_later_version_that_asks_for_more_time_holds_by_its_own_numbers() {
    Protocol label = LabelWorld.protocol();
    var more = label.more();
    Instant soon = START.plus(Duration.ofDays(3)).minusMillis(1);

    assertThat(blocks(after(later(72, 3, more)).at(soon), "0.25", Place.CLINIC))
        .containsExactly(GuardRule.SPACING);
    assertThat(blocks(after(later(24, 1, more)).at(soon), "0.25", Place.CLINIC))
        .containsExactly(GuardRule.WEEKLY_COUNT);
    assertThat(
            blocks(
                usual()
                    .by(later(72, 1, more))
                    .around(Circumstances.NONE.withNewer(List.of(label)))
                    .at(soon),
                "0.25",
                Place.CLINIC))
        .containsExactly(GuardRule.SPACING, GuardRule.WEEKLY_COUNT);
  }

  @Test
  void a_later_version_that_limits_a_component_forbids_what_holds_more_of_it() {
    Protocol label = LabelWorld.protocol();
    var limit =
        new Protocol.ComponentLimit(
            Component.ALPROSTADIL, Mass.parseMicrograms("5").orThrow(), label.ceiling().source());
    Protocol newer = later(label.limits(), label.more().withComponentLimits(List.of(limit)));

    assertThat(newer.lowersLimitOf(label)).isTrue();
    assertThat(label.lowersLimitOf(newer)).isFalse();
    assertThat(blocks(after(newer), "0.25", Place.CLINIC)).isEmpty();
    assertThat(blocks(after(newer), "0.5", Place.CLINIC))
        .containsExactly(GuardRule.NEWER_VERSION_FORBIDS);
  }

  @Test
  void a_dose_that_is_signed_after_a_finding_is_not_stopped_by_it() {
    Question question = usual().around(Circumstances.NONE.withFound(8)).question();
    var signed = new SignedDose(ml("0.25"), Place.HOME, Set.of(), Optional.empty(), 9);

    assertThat(Dosing.mayInject(question, Optional.of(signed)).isClear()).isTrue();
  }

  @Test
  void after_a_lapse_the_dose_is_the_last_proven_one_also_after_a_poor_response() {
    LabelWorld world =
        EachGuardAloneTest.usual()
            .injected("0.5", Grade.NONE, minutes(20))
            .injected("0.75", "0.75", Grade.NONE, minutes(20), SimpleCauses.ONE_FOUND);

    assertThat(Dosing.advise(UpkeepAlone.lapsed(world).question()).decision().proposed())
        .contains(ml("0.5"));
  }

  @Test
  void after_a_lapse_without_a_proven_dose_it_begins_at_the_lowest_step() {
    LabelWorld world = new LabelWorld().injected("0.12", Grade.USABLE, minutes(90));

    assertThat(Dosing.raisedBy(UpkeepAlone.lapsed(world).question(), ml("0.25"), Place.CLINIC))
        .extracting(Verdict::rule)
        .contains(GuardRule.ABOVE_BEFORE_LAPSE);
  }
}
