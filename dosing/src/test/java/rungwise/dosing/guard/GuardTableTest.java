package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.syringe.Barrels;

/** The table of guards itself, and the edges of guards that no course is needed for. */
final class GuardTableTest {

  @ParameterizedTest
  @EnumSource(GuardRule.class)
  void each_guard_says_what_it_forbids_and_where_that_is_from(GuardRule rule) {
    assertThat(rule.wording()).endsWith(".").hasSizeGreaterThan(20);
    assertThat(rule.source().words()).isNotBlank();
    assertThat(rule.guardClass().words()).isNotBlank();
  }

  @Test
  void a_guard_about_the_man_says_what_would_clear_it() {
    assertThat(GuardRule.EMERGENCY_OPEN.clears()).isInstanceOf(Clears.When.class);
    assertThat(GuardRule.EMERGENCY_OPEN.clears().toString()).startsWith("when a prescriber");
    assertThat(GuardRule.ABOVE_CEILING.clears()).isEqualTo(new Clears.Never());
    assertThat(GuardRule.ABOVE_CEILING.clears().toString()).isEqualTo("never");
    assertThat(new Clears.At(START).toString()).isEqualTo("at " + START);
  }

  @Test
  void a_verdict_tells_its_rule_its_facts_and_what_clears_it() {
    assertThat(Verdict.of(GuardRule.NO_ORDER).toString())
        .startsWith("NO_ORDER [] clears when a prescriber signs");
  }

  @Test
  void what_never_bends_is_a_hard_stop() {
    assertThat(
            List.of(
                GuardRule.ABOVE_CEILING,
                GuardRule.ABOVE_COMPONENT_LIMIT,
                GuardRule.MORE_THAN_ONE_STEP_UP,
                GuardRule.CONTRAINDICATED,
                GuardRule.DECISION_MISSING,
                GuardRule.VIAL_PAST_DATE,
                GuardRule.VIAL_OPEN_TOO_LONG,
                GuardRule.VIAL_DIFFERS,
                GuardRule.VIAL_GONE,
                GuardRule.VIAL_TO_BE_JUDGED,
                GuardRule.EMERGENCY_OPEN,
                GuardRule.THIRD_IN_24_HOURS,
                GuardRule.HIGHER_AFTER_LONG,
                GuardRule.VOLUME_CLOSED,
                GuardRule.BETWEEN_MARKS))
        .allMatch(rule -> rule.guardClass() == GuardClass.HARD_STOP);
  }

  @Test
  void without_a_course_the_limits_and_the_drawing_up_are_asked() {
    List<GuardRule> tiny = ofDose("0.02");
    List<GuardRule> usual = ofDose("0.25");

    assertThat(tiny).contains(GuardRule.SMALL_VOLUME);
    assertThat(usual).isEmpty();
    assertThat(
            DoseGuards.askWithoutCourse(
                    new Dose(ml("1"), SamplePreparations.ALPROSTADIL_20, Barrels.U100_1))
                .stream()
                .filter(Verdict::isBlock))
        .isEmpty();
  }

  private static List<GuardRule> ofDose(String volume) {
    return DoseGuards.askWithoutCourse(
            new Dose(ml(volume), SamplePreparations.ALPROSTADIL_20, Barrels.U100_1))
        .stream()
        .map(Verdict::rule)
        .toList();
  }

  private static boolean needsCare(LabelWorld world, String volume) {
    Question question = world.by(LabelSheet.label().careAbove("5").protocol()).question();
    return DoseGuards.ask(question, ml(volume)).stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.CARE_ABOVE);
  }

  @Test
  void care_is_needed_above_the_amount_and_with_a_heart_condition_only() {
    LabelWorld heart = new LabelWorld().screened(Condition.STABLE_ANGINA, Answer.YES);

    assertThat(needsCare(heart, "0.25")).isFalse();
    assertThat(needsCare(heart, "0.26")).isTrue();
    assertThat(needsCare(new LabelWorld(), "0.5")).isFalse();
    assertThat(needsCare(new LabelWorld().screened(Condition.TRAZODONE, Answer.YES), "0.5"))
        .isFalse();
  }

  @Test
  void a_second_dose_follows_the_first_of_the_same_preparation_only() {
    LabelWorld world =
        new LabelWorld()
            .injectedAt(
                START, ml("0.12"), ml("0.12"), Grade.NONE, minutes(20), SimpleCauses.NONE_FOUND)
            .at(START.plus(Duration.ofMinutes(50)));

    assertThat(SameVisit.next(world.question())).isPresent();
    assertThat(
            SameVisit.next(
                world
                    .with(SamplePreparations.ALPROSTADIL_40)
                    .by(LabelSheet.label().startingAt("5").protocol())
                    .question()))
        .isEmpty();
  }

  @Test
  void after_a_partial_response_the_amount_itself_still_counts_as_within_the_rule() {
    LabelWorld exact =
        new LabelWorld()
            .injectedAt(
                START,
                ml("0.125"),
                ml("0.125"),
                Grade.FIRM_NOT_USABLE,
                minutes(20),
                SimpleCauses.NONE_FOUND)
            .at(START.plus(Duration.ofMinutes(50)));

    assertThat(SameVisit.next(exact.question())).isPresent();
  }

  @Test
  void no_rule_for_none_means_no_second_dose_after_none() {
    Protocol partialOnly =
        LabelSheet.label()
            .secondDose(
                rule ->
                    new Protocol.SameVisit(
                        rule.within(),
                        /* afterNone= */ false,
                        rule.afterPartialUpTo(),
                        rule.source()))
            .protocol();
    LabelWorld world =
        new LabelWorld()
            .by(partialOnly)
            .injectedAt(
                START, ml("0.12"), ml("0.12"), Grade.NONE, minutes(20), SimpleCauses.NONE_FOUND)
            .at(START.plus(Duration.ofMinutes(50)));

    assertThat(SameVisit.next(world.question())).isEmpty();
  }
}
