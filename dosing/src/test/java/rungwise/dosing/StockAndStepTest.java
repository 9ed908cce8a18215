package rungwise.dosing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rungwise.dosing.LabelWorld.ALPROSTADIL_20_LABEL;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.NewStock;
import rungwise.dosing.guard.SignedDose;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.Freshness;

/** A new vial after older stock, and the one step that may follow without a new signature. */
final class StockAndStepTest {

  private static final Stock OLD = new Stock("old vial", Freshness.OLD);
  private static final Stock NEW = new Stock("new vial", Freshness.FRESH);

  private static LabelWorld raisedOnOldStock() {
    return new LabelWorld()
        .injected("0.12", Grade.FULLER, minutes(20))
        .from(OLD)
        .injected("0.25", Grade.FULLER, minutes(20))
        .injected("0.5", Grade.FULLER, minutes(20));
  }

  @Test
  void a_new_vial_after_older_stock_begins_at_the_last_dose_proven_on_fresh_stock() {
    Advice advice =
        Dosing.advise(
            raisedOnOldStock().holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL)).question());

    assertThat(advice.decision()).isEqualTo(new Decision.StepDown(ml("0.12")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.NEW_STOCK_RESTART);
    assertThat(advice.proposal().reasons())
        .extracting(reason -> reason.rule())
        .contains(TitrationRule.STEP_AFTER_PARTIAL);
  }

  @Test
  void it_begins_at_the_last_proven_dose_even_where_that_is_not_the_lowest_step() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .injected("0.25", Grade.FULLER, minutes(20))
            .from(OLD)
            .injected("0.5", Grade.FULLER, minutes(20))
            .holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(NewStock.restartAt(world.question())).contains(ml("0.25"));
    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.StepDown(ml("0.25")));
  }

  /** A long one on old stock: one step down, however much was proven on fresh stock. */
  @Test
  void a_new_vial_never_lifts_what_the_last_report_leads_to() {
    LabelWorld down =
        new LabelWorld()
            .injected("0.25", Grade.FULLER, minutes(20))
            .from(OLD)
            .injected("0.25", Grade.USABLE, minutes(90))
            .holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(NewStock.restartAt(down.question())).contains(ml("0.25"));
    assertThat(Dosing.advise(down.question()).decision())
        .isEqualTo(new Decision.StepDown(ml("0.12")));
    assertThat(Dosing.advise(down.question()).reason().rule())
        .isEqualTo(TitrationRule.OVER_AN_HOUR);
  }

  @Test
  void a_new_vial_makes_no_dose_where_the_last_report_leads_to_none() {
    LabelWorld none =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .from(OLD)
            .injected("0.12", Grade.USABLE, minutes(90))
            .holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(NewStock.restartAt(none.question())).contains(ml("0.12"));
    assertThat(Dosing.advise(none.question()).decision()).isEqualTo(new Decision.Pause());
    assertThat(Dosing.advise(none.question()).reason().rule())
        .isEqualTo(TitrationRule.OVER_AN_HOUR_AT_LOWEST);
  }

  @Test
  void what_was_proven_with_other_drugs_does_not_begin_a_new_vial() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.25", Grade.FULLER, minutes(20))
            .injectedWith(SamplePreparations.THREE_DRUG, "0.2", minutes(20))
            .from(OLD)
            .injected("0.5", Grade.FULLER, minutes(20))
            .holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(NewStock.restartAt(world.question())).contains(ml("0.25"));
  }

  @Test
  void without_any_dose_from_fresh_stock_it_begins_at_the_start() {
    LabelWorld world =
        new LabelWorld()
            .from(Stock.NOT_RECORDED)
            .injected("0.12", Grade.FULLER, minutes(20))
            .injected("0.25", Grade.FULLER, minutes(20))
            .holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.StepDown(ml("0.12")));
  }

  @Test
  void the_same_vial_and_a_new_one_after_fresh_stock_change_nothing() {
    LabelWorld sameVial = raisedOnOldStock().holding(LabelWorld.vial(OLD, ALPROSTADIL_20_LABEL));
    LabelWorld afterFresh =
        new LabelWorld()
            .injected("0.25", Grade.FULLER, minutes(20))
            .holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(Dosing.advise(sameVial.question()).decision())
        .isEqualTo(new Decision.StepUp(ml("0.75")));
    assertThat(Dosing.advise(afterFresh.question()).decision())
        .isEqualTo(new Decision.StepUp(ml("0.5")));
  }

  /** A record of its own for the same medicine, as of another pharmacy. */
  private static final Preparation OTHER_RECORD =
      new Preparation(
          new PreparationId("alprostadil-20-elsewhere"),
          "Alprostadil 20 of another pharmacy",
          new Form.Solution(),
          SamplePreparations.ALPROSTADIL_20.ingredients(),
          SamplePreparations.ALPROSTADIL_20.ceiling(),
          Optional.empty());

  @Test
  void another_record_of_the_same_medicine_does_not_make_older_stock_fresh() {
    LabelWorld world =
        raisedOnOldStock().with(OTHER_RECORD).holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.StepDown(ml("0.12")));
    assertThat(DoseGuards.ask(world.question(), ml("0.25")))
        .extracting(Verdict::rule)
        .contains(GuardRule.NEW_STOCK);
  }

  @Test
  void another_strength_does_not_make_older_stock_fresh() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.25", Grade.FULLER, minutes(20))
            .from(OLD)
            .injected("0.5", Grade.FULLER, minutes(20))
            .with(SamplePreparations.ALPROSTADIL_40)
            .holding(LabelWorld.vial(NEW, SamplePreparations.ALPROSTADIL_40.composition()));

    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.Start(ml("0.12")));
  }

  @Test
  void older_stock_alone_carries_nothing_to_another_strength_but_the_lowest_step() {
    LabelWorld world =
        new LabelWorld()
            .from(OLD)
            .injected("0.5", Grade.FULLER, minutes(20))
            .with(SamplePreparations.ALPROSTADIL_40)
            .holding(LabelWorld.vial(NEW, SamplePreparations.ALPROSTADIL_40.composition()));
    Advice advice = Dosing.advise(world.question());

    assertThat(advice.decision()).isEqualTo(new Decision.Start(world.ladder().first()));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.NEW_STOCK_RESTART);
  }

  @Test
  void without_a_vial_on_record_older_stock_is_not_forgotten() {
    LabelWorld world = raisedOnOldStock().withoutVial();

    Advice advice = Dosing.advise(world.question());

    assertThat(advice.decision()).isEqualTo(new Decision.StepDown(ml("0.12")));
    assertThat(advice.verdictsOn(ml("0.5")))
        .extracting(Verdict::rule)
        .contains(GuardRule.NEW_STOCK);
  }

  @Test
  void a_vial_that_nobody_wrote_down_is_never_the_same_one() {
    assertThat(Stock.NOT_RECORDED.isSameAs(Stock.NOT_RECORDED)).isFalse();
    assertThat(NEW.isSameAs(new Stock("new vial", Freshness.OLD))).isTrue();
    assertThat(NEW.isSameAs(OLD)).isFalse();
    assertThatThrownBy(() -> new Stock(" ", Freshness.FRESH))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void a_lower_dose_of_the_new_vial_lifts_the_hold_step_by_step() {
    LabelWorld world =
        raisedOnOldStock()
            .from(NEW)
            .injected("0.12", Grade.FULLER, minutes(20))
            .holding(LabelWorld.vial(NEW, ALPROSTADIL_20_LABEL));

    assertThat(Dosing.advise(world.question()).decision())
        .isEqualTo(new Decision.StepUp(ml("0.25")));
  }

  private static SignedDose withNext(String volume, String next) {
    return new SignedDose(ml(volume), Place.HOME, Set.of(), Optional.of(ml(next)));
  }

  private static LabelWorld poor(SimpleCauses causes, SoftAfter soft, Grade grade) {
    return new LabelWorld()
        .injected("0.12", Grade.FULLER, minutes(20))
        .at(Place.HOME)
        .injected("0.25", "0.25", grade, soft, causes);
  }

  @Test
  void the_signed_next_step_opens_after_a_poor_response_over_in_time_with_nothing_wrong() {
    var open = poor(SimpleCauses.NONE_FOUND, minutes(20), Grade.FIRM_NOT_USABLE);

    assertThat(Dosing.mayTakeNextStep(open.question(), withNext("0.25", "0.5")).isClear()).isTrue();
  }

  @Test
  void it_stays_closed_otherwise() {
    List<LabelWorld> closed =
        List.of(
            poor(SimpleCauses.NONE_FOUND, minutes(20), Grade.USABLE),
            poor(SimpleCauses.NONE_FOUND, minutes(61), Grade.FULLER),
            poor(SimpleCauses.NONE_FOUND, new SoftAfter.NotKnown(), Grade.FULLER),
            poor(SimpleCauses.NOT_ASKED, minutes(20), Grade.FULLER),
            poor(SimpleCauses.ONE_FOUND, minutes(20), Grade.FULLER),
            new LabelWorld().injected("0.12", Grade.FULLER, minutes(20)));

    assertThat(closed)
        .allSatisfy(
            world ->
                assertThat(
                        Dosing.mayTakeNextStep(world.question(), withNext("0.25", "0.5")).blocks())
                    .extracting(Verdict::rule)
                    .contains(GuardRule.NEXT_STEP_NOT_YET));
  }

  @Test
  void the_next_step_is_one_step_above_the_dose_and_within_every_other_guard() {
    var question = poor(SimpleCauses.NONE_FOUND, minutes(20), Grade.FULLER).question();

    assertThat(DoseGuards.askForNextStep(question, ml("0.5"), ml("0.75"))).isEmpty();
    assertThat(DoseGuards.askForNextStep(question, ml("0.25"), ml("0.75")))
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.MORE_THAN_ONE_STEP_UP);
    assertThat(
            DoseGuards.askForNextStep(
                new LabelWorld().injected("0.75", Grade.USABLE, minutes(130)).question(),
                ml("0.5"),
                ml("0.75")))
        .extracting(Verdict::rule)
        .containsExactly(GuardRule.VOLUME_CLOSED);
  }

  @Test
  void a_struck_report_of_an_emergency_still_waits_for_a_prescriber() {
    LabelWorld struck =
        new LabelWorld()
            .injected("0.12", Grade.FULLER, minutes(20))
            .injected("0.25", Grade.USABLE, minutes(250))
            .struck();

    assertThat(Dosing.advise(struck.question()).reason().rule())
        .isEqualTo(TitrationRule.EMERGENCY_FIRST);
    assertThat(Dosing.advise(struck.reviewed().question()).reason().rule())
        .isEqualTo(TitrationRule.NEXT_STEP_TOO_LONG);
    assertThat(Dosing.advise(struck.question()).isAllowed(ml("0.25"))).isFalse();
  }

  @Test
  void a_solution_is_fresh_up_to_and_with_its_last_fresh_day() {
    Optional<LocalDate> made = Optional.of(LocalDate.of(2026, 1, 1));

    assertThat(Freshness.of(made, LocalDate.of(2026, 1, 31), 30)).isEqualTo(Freshness.FRESH);
    assertThat(Freshness.of(made, LocalDate.of(2026, 2, 1), 30)).isEqualTo(Freshness.OLD);
    assertThat(Freshness.of(Optional.empty(), LocalDate.of(2026, 2, 1), 30))
        .isEqualTo(Freshness.NOT_KNOWN);
  }
}
