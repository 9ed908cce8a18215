package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.EachGuardAloneTest.Alone;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Beginning;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * A man who injects elsewhere already is taken over. That the first dose here is half of the told
 * one is an assumption of the program; no text that was read gives a number.
 */
final class TakenOverTest {

  private static final SoftAfter SHORT = minutes(40);
  private static final int HALF = 50;

  /** The guards of it, each in a case in which it alone blocks. */
  static List<Alone> cases() {
    return List.of(
        new Alone(
            GuardRule.ABOVE_TOLD,
            () ->
                EachGuardAloneTest.inClinic(
                    EachGuardAloneTest.usual().takenOver("0.4", Grade.USABLE, SHORT, HALF),
                    "0.25")),
        new Alone(
            GuardRule.NOT_OPENED_AS_TOLD,
            () ->
                EachGuardAloneTest.inClinic(
                    new LabelWorld().takenOver("1", Grade.USABLE, SHORT, HALF), "0.25")),
        new Alone(
            GuardRule.NOT_WATCHED_SINCE_TOLD,
            () ->
                EachGuardAloneTest.home(
                    EachGuardAloneTest.usual().takenOver("0.6", Grade.USABLE, SHORT, HALF),
                    "0.25")));
  }

  private static List<GuardRule> raised(LabelWorld world, String volume, Place place) {
    return raised(world.question(), ml(volume), place);
  }

  private static List<GuardRule> raised(Question question, Volume volume, Place place) {
    return Dosing.raisedBy(question, volume, place).stream().map(Verdict::rule).toList();
  }

  @Test
  void a_told_dose_alone_opens_nothing_above_the_first_step() {
    Advice advice =
        Dosing.advise(new LabelWorld().takenOver("1", Grade.USABLE, SHORT, HALF).question());

    assertThat(advice.decision()).isEqualTo(new Decision.Start(ml("0.12")));
    assertThat(advice.proposal().reasons().getFirst().rule())
        .isEqualTo(TitrationRule.FIRST_DOSE_AS_TOLD);
  }

  @Test
  void a_prescriber_opens_the_schedule_at_half_of_it_rounded_down_to_a_line() {
    // 0.75 mL of 20 mcg/mL: half is 0.375 mL, and a 1 mL syringe has lines each 0.01 mL.
    LabelWorld world =
        new LabelWorld().takenOver("0.75", Grade.USABLE, SHORT, HALF).openedAsTold("0.37");

    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.Start(ml("0.37")));
    assertThat(raised(world, "0.37", Place.CLINIC))
        .doesNotContain(GuardRule.ABOVE_TOLD, GuardRule.NOT_OPENED_AS_TOLD);
    assertThat(raised(world, "0.37", Place.HOME)).contains(GuardRule.NOT_WATCHED_SINCE_TOLD);
  }

  @Test
  void whatever_was_opened_no_first_dose_is_above_half_of_the_told_one() {
    LabelWorld world =
        new LabelWorld().takenOver("0.75", Grade.USABLE, SHORT, HALF).openedAsTold("0.75");
    Question question = world.question();

    assertThat(Dosing.advise(question).decision()).isEqualTo(new Decision.Start(ml("0.37")));
    for (Volume rung : question.ladder().rungs()) {
      assertThat(raised(question, rung, Place.CLINIC).contains(GuardRule.ABOVE_TOLD))
          .as(rung.toString())
          .isEqualTo(rung.isMoreThan(ml("0.375")));
    }
  }

  @Test
  void what_a_prescriber_opened_lower_holds() {
    LabelWorld world =
        new LabelWorld().takenOver("0.75", Grade.USABLE, SHORT, HALF).openedAsTold("0.2");

    assertThat(Dosing.advise(world.question()).decision()).isEqualTo(new Decision.Start(ml("0.2")));
    assertThat(raised(world, "0.25", Place.CLINIC)).contains(GuardRule.NOT_OPENED_AS_TOLD);
  }

  @Test
  void a_protocol_may_only_lower_the_part() {
    LabelWorld world =
        new LabelWorld().takenOver("0.8", Grade.USABLE, SHORT, /* percent= */ 25).openedAsTold("1");

    assertThat(Dosing.advise(world.question()).decision()).isEqualTo(new Decision.Start(ml("0.2")));
    assertThatThrownBy(() -> new LabelWorld().takenOver("0.8", Grade.USABLE, SHORT, 51))
        .hasMessageContaining("51 percent");
  }

  @Test
  void where_the_first_step_is_more_than_half_the_schedule_begins_below_it() {
    // The label's first step is 2.5 mcg, 0.12 mL; he was told to inject 0.1 mL.
    LabelWorld world = new LabelWorld().takenOver("0.1", Grade.USABLE, SHORT, HALF);

    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.Start(ml("0.05")));
    assertThat(raised(world, "0.12", Place.CLINIC)).contains(GuardRule.ABOVE_TOLD);
  }

  @Test
  void a_dose_too_small_for_the_syringe_gives_no_schedule() {
    LabelWorld told = new LabelWorld().takenOver("0.02", Grade.USABLE, SHORT, HALF);

    assertThatThrownBy(told::ladder).hasMessageContaining("choose a weaker strength");
  }

  @Test
  void what_was_told_never_counts_as_tolerated_watched_or_injected_here() {
    Question question = new LabelWorld().takenOver("1", Grade.USABLE, SHORT, HALF).question();

    assertThat(question.history().lastTolerated(question.preparation())).isEmpty();
    assertThat(question.history().provenOnFreshStock()).isEmpty();
    assertThat(question.last()).isEmpty();
    assertThat(CourseGuards.askForHome(question))
        .extracting(Verdict::rule)
        .contains(GuardRule.FIRST_IN_CLINIC, GuardRule.NOT_WATCHED_SINCE_TOLD);
  }

  @Test
  void of_several_told_doses_the_lowest_bounds() {
    LabelWorld world =
        new LabelWorld()
            .takenOver("1", Grade.USABLE, SHORT, HALF)
            .takenOver("0.4", Grade.USABLE, SHORT, HALF)
            .openedAsTold("1");

    assertThat(Dosing.advise(world.question()).decision()).isEqualTo(new Decision.Start(ml("0.2")));
  }

  @Test
  void a_long_told_erection_stops_and_closes_as_one_from_before_does() {
    Question question =
        new LabelWorld().takenOver("0.5", Grade.FULLY_FIRM, minutes(250), HALF).question();

    assertThat(question.history().openEmergencies()).hasSize(1);
    assertThat(CourseGuards.ask(question))
        .extracting(Verdict::rule)
        .contains(GuardRule.EMERGENCY_OPEN);
    assertThat(raised(question, ml("0.5"), Place.CLINIC)).contains(GuardRule.VOLUME_CLOSED);
  }

  @Test
  void two_hours_elsewhere_close_that_dose_and_all_above_it_and_half_stays_the_most() {
    LabelWorld world = new LabelWorld().takenOver("0.2", Grade.USABLE, minutes(120), HALF);

    assertThat(raised(world, "0.25", Place.CLINIC)).contains(GuardRule.VOLUME_CLOSED);
    assertThat(raised(world, "0.12", Place.CLINIC)).contains(GuardRule.ABOVE_TOLD);
    assertThat(Dosing.advise(world.question()).decision()).isEqualTo(new Decision.Refer());
    // Less of everything than half: 0.1 mL would be half itself.
    assertThat(world.ladder().first()).isEqualTo(ml("0.09"));
    assertThat(raised(world, "0.09", Place.CLINIC))
        .contains(GuardRule.FIRST_AFTER_TOO_LONG)
        .doesNotContain(GuardRule.ABOVE_TOLD);
  }

  @Test
  void an_end_that_nobody_knows_proposes_nothing_and_still_firm_counts_as_an_emergency() {
    LabelWorld notKnown =
        new LabelWorld().takenOver("1", Grade.USABLE, new SoftAfter.NotKnown(), HALF);
    LabelWorld firm =
        new LabelWorld()
            .takenOver("1", Grade.USABLE, new SoftAfter.AtLeast(TimeSpan.ofMinutes(30)), HALF);

    assertThat(Dosing.advise(notKnown.openedAsTold("0.5").question()).decision())
        .isEqualTo(new Decision.Refer());
    assertThat(firm.question().history().openEmergencies()).hasSize(1);
  }

  @Test
  void a_told_injection_counts_for_the_time_between_two() {
    LabelWorld world = new LabelWorld().takenOver("1", Grade.USABLE, SHORT, HALF);
    world.at(START.minus(Duration.ofHours(1)));

    assertThat(TimeGuards.ask(world.question()))
        .extracting(Verdict::rule)
        .contains(GuardRule.SPACING);
  }

  @Test
  void once_a_dose_was_watched_here_the_next_step_is_the_schedules() {
    LabelWorld world =
        new LabelWorld()
            .takenOver("1", Grade.USABLE, SHORT, HALF)
            .openedAsTold("0.5")
            .injected("0.5", Grade.FULLER, minutes(20));

    Advice advice = Dosing.advise(world.question());

    assertThat(advice.decision()).isEqualTo(new Decision.StepUp(ml("0.75")));
    assertThat(raised(world, "0.75", Place.CLINIC)).doesNotContain(GuardRule.ABOVE_TOLD);
    assertThat(raised(world, "0.5", Place.HOME)).doesNotContain(GuardRule.NOT_WATCHED_SINCE_TOLD);
  }

  @Test
  void a_second_dose_in_the_same_visit_is_no_later_one() {
    LabelWorld world =
        new LabelWorld()
            .takenOver("0.5", Grade.USABLE, SHORT, HALF)
            .openedAsTold("0.25")
            .injected("0.25", Grade.NONE, minutes(20));
    world.at(START.plus(Duration.ofMinutes(40)));

    assertThat(raised(world, "0.12", Place.CLINIC)).contains(GuardRule.ABOVE_TOLD);
  }

  @Test
  void what_was_watched_before_he_was_taken_over_answers_nothing() {
    LabelWorld world = EachGuardAloneTest.usual().takenOver("0.4", Grade.USABLE, SHORT, HALF);

    assertThat(raised(world, "0.25", Place.CLINIC)).contains(GuardRule.ABOVE_TOLD);
    assertThat(raised(world, "0.12", Place.HOME)).contains(GuardRule.NOT_WATCHED_SINCE_TOLD);
  }

  @Test
  void another_composition_begins_by_components() {
    // 0.4 mL of 20 mcg/mL is 8 mcg: half, 4 mcg, is 0.4 mL of 10 mcg/mL.
    LabelWorld world =
        toldOf(SamplePreparations.ALPROSTADIL_20, "0.4").with(LabelWorld.ALPROSTADIL_10);

    assertThat(Dosing.advise(world.openedAsTold("0.5").question()).decision())
        .isEqualTo(new Decision.Start(ml("0.4")));
  }

  @Test
  void with_a_component_that_is_new_to_him_nothing_can_be_opened() {
    Preparation mixture = SamplePreparations.THREE_DRUG;
    Question question = toldOf(SamplePreparations.ALPROSTADIL_20, "1").openedAsTold("1").question();

    assertThat(question.history().beginning(mixture))
        .isInstanceOfSatisfying(
            Beginning.AsTold.class,
            told -> assertThat(told.openable(mixture, Barrels.U100_1)).isEmpty());
  }

  private static LabelWorld toldOf(Preparation preparation, String volume) {
    return new LabelWorld().with(preparation).takenOver(volume, Grade.USABLE, SHORT, HALF);
  }

  @Test
  void of_every_told_dose_the_first_one_here_is_the_last_line_within_its_half() {
    for (long told = 40; told <= 1000; told++) {
      LabelWorld world =
          new LabelWorld()
              .takenOver(Volume.ofMicrolitres(told).millilitresText(), Grade.USABLE, SHORT, HALF)
              .openedAsTold("1");
      Question question = world.question();
      // Lines of a 1 mL syringe stand each 10 microlitres.
      Volume most = Volume.ofMicrolitres(told / 20 * 10);

      assertThat(question.entry()).as("told %s", told).contains(most);
      for (Volume rung : question.ladder().rungs()) {
        assertThat(raised(question, rung, Place.CLINIC).contains(GuardRule.ABOVE_TOLD))
            .as("told %s, asked %s", told, rung)
            .isEqualTo(rung.isMoreThan(most));
      }
    }
  }
}
