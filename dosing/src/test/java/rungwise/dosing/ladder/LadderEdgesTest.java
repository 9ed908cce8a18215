package rungwise.dosing.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.ml;
import static rungwise.dosing.known.SamplePreparations.ALPROSTADIL_20;
import static rungwise.dosing.known.SamplePreparations.ALPROSTADIL_40;
import static rungwise.dosing.known.SamplePreparations.THREE_DRUG;
import static rungwise.dosing.known.SamplePreparations.THREE_DRUG_STRONGER;
import static rungwise.dosing.known.SamplePreparations.TWO_DRUG;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Where a schedule begins, at the edges of what is offered, carried over and measured. */
final class LadderEdgesTest {

  private static final Set<Component> THREE =
      Set.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL);

  private static final Protocol OF_STRONGER =
      LabelSheet.byVolume(THREE).protocol().asWrittenFor(THREE_DRUG_STRONGER);

  private static Reading<LadderProposal> begun(
      Protocol protocol, Preparation preparation, Barrel barrel, Beginning beginning) {
    return LadderProposal.of(protocol, preparation, barrel, AetiologyGroup.VASCULOGENIC, beginning);
  }

  private static Beginning after(Preparation before, String tolerated) {
    return new Beginning.AtMost(new Carried(before, ml(tolerated)));
  }

  @Test
  void two_preparations_are_of_the_same_drugs_if_each_holds_all_of_the_other() {
    assertThat(ofTheSame(ALPROSTADIL_20, ALPROSTADIL_40)).isTrue();
    assertThat(ofTheSame(THREE_DRUG, THREE_DRUG_STRONGER)).isTrue();
    assertThat(ofTheSame(THREE_DRUG, ALPROSTADIL_20)).isFalse();
    assertThat(ofTheSame(ALPROSTADIL_20, THREE_DRUG)).isFalse();
    assertThat(ofTheSame(TWO_DRUG, THREE_DRUG)).isFalse();
    assertThat(ofTheSame(TWO_DRUG, ALPROSTADIL_20)).isFalse();
  }

  private static boolean ofTheSame(Preparation before, Preparation next) {
    return new Carried(before, ml("0.1")).isOfTheSameDrugsAs(next);
  }

  /** 0.05 mL of 20 mcg/mL alprostadil holds as much of it as 0.05 mL of the mixture. */
  @Test
  void with_a_component_that_is_new_he_enters_at_the_first_step_or_not_at_all() {
    List<Volume> rungs = Stream.of("0.05", "0.1").map(LabelWorld::ml).toList();
    var ladder = new Ladder(THREE_DRUG_STRONGER, Barrels.U100_0_5, rungs, ml("0.5"));

    assertThat(new Carried(ALPROSTADIL_20, ml("0.05")).entryTo(ladder)).contains(ml("0.05"));
    assertThat(new Carried(ALPROSTADIL_20, ml("0.5")).entryTo(ladder)).contains(ml("0.05"));
    assertThat(new Carried(ALPROSTADIL_20, ml("0.049")).entryTo(ladder)).isEmpty();
  }

  @Test
  void what_he_tolerated_is_said_only_where_it_lowers_the_first_dose() {
    assertThat(notes(after(ALPROSTADIL_20, "0.05"))).noneMatch(LadderEdgesTest::saysTolerated);
    assertThat(notes(after(ALPROSTADIL_20, "0.04"))).anyMatch(LadderEdgesTest::saysTolerated);
  }

  private static List<String> notes(Beginning beginning) {
    return begun(OF_STRONGER, THREE_DRUG_STRONGER, Barrels.U100_0_5, beginning).orThrow().notes();
  }

  private static boolean saysTolerated(String note) {
    return note.startsWith("He tolerated");
  }

  /** 40 mcg/mL is offered from 5 mcg on: 0.125 mL, which is the line at 0.12 mL. */
  @Test
  void whatever_he_tolerated_a_schedule_begins_at_the_start_or_at_the_least_that_is_offered() {
    assertThat(firstWhatever(LabelWorld.protocol(), ALPROSTADIL_20)).isEqualTo(ml("0.12"));
    assertThat(firstWhatever(LabelWorld.protocol(), ALPROSTADIL_40)).isEqualTo(ml("0.12"));
    assertThat(firstWhatever(LabelSheet.label().startingAt("10").protocol(), ALPROSTADIL_40))
        .isEqualTo(ml("0.25"));
  }

  private static Volume firstWhatever(Protocol protocol, Preparation preparation) {
    return LadderProposal.whateverHeTolerated(
            protocol, preparation, Barrels.U100_1, AetiologyGroup.VASCULOGENIC)
        .orThrow()
        .ladder()
        .first();
  }

  /** 6 mcg are 0.15 mL of 40 mcg/mL; the least that is offered, 5 mcg, is below the start. */
  @Test
  void a_start_above_the_least_that_is_offered_stays_the_start() {
    Ladder ladder =
        begun(
                LabelSheet.label().startingAt("10").protocol(),
                ALPROSTADIL_40,
                Barrels.U100_1,
                after(ALPROSTADIL_20, "0.3"))
            .orThrow()
            .ladder();

    assertThat(ladder.rungs()).startsWith(ml("0.15"), ml("0.25"));
  }

  /** By hand: half of half a unit, 1.5 % of 0.3 mL and 2 % of 0.02 mL are over 25 % of 0.02 mL. */
  @Test
  void where_no_syringe_draws_a_first_dose_better_a_weaker_strength_is_named() {
    List<String> notes =
        begun(
                LabelSheet.label().startingAt("0.4").protocol(),
                ALPROSTADIL_20,
                Barrels.U100_0_3_HALF_UNIT,
                new Beginning.AsNew())
            .orThrow()
            .notes();

    assertThat(notes)
        .anyMatch(note -> note.endsWith("A weaker strength would be drawn better."))
        .noneMatch(note -> note.contains("draws it better"));
  }

  @Test
  void on_a_device_without_lines_nothing_is_ordered_and_one_fault_says_so() {
    assertThat(
            begun(
                    LabelWorld.protocol(),
                    ALPROSTADIL_20,
                    Barrels.PREFILLED_0_5,
                    new Beginning.AsNew())
                .faults())
        .singleElement()
        .asString()
        .contains("No line of a 0.5 mL prefilled syringe is known here");
  }

  @Test
  void what_lasted_too_long_is_named_where_no_first_dose_is_proposed() {
    var tooLong =
        new Beginning.BelowTooLong(
            List.of(
                new Beginning.Held(ALPROSTADIL_20, ml("0.25")),
                new Beginning.Held(ALPROSTADIL_20, ml("0.25"))));

    assertThat(tooLong.words()).isEqualTo("alprostadil 5 mcg");
  }

  /** By hand: 2.5 mcg of 20 mcg/mL are 0.125 mL, between two lines; 5 mcg are 0.25 mL, a line. */
  @Test
  void a_rung_between_two_lines_is_rounded_down_and_says_so() {
    List<String> notes =
        begun(LabelWorld.protocol(), ALPROSTADIL_20, Barrels.U100_1, new Beginning.AsNew())
            .orThrow()
            .notes();

    assertThat(notes)
        .anyMatch(note -> note.startsWith("2.5 mcg would be 0.125 mL, between two lines"))
        .noneMatch(note -> note.startsWith("5 mcg would be"));
  }

  /** By hand: 0.05 mcg are 0.0025 mL, 0.2 mcg are 0.01 mL; half a unit is 0.005 mL. */
  @Test
  void a_first_dose_that_no_line_measures_or_that_is_too_small_is_no_first_dose() {
    assertThat(faultsFrom("0.05", ALPROSTADIL_20))
        .singleElement()
        .asString()
        .contains("0.0025 mL, which a ")
        .contains("cannot measure: choose another syringe or strength");
    assertThat(faultsFrom("0.2", ALPROSTADIL_20))
        .singleElement()
        .asString()
        .startsWith("0.01 mL is below 0.02 mL, the least that can be measured");
    assertThat(faultsFrom("0.4", ALPROSTADIL_20)).isEmpty();
  }

  private static List<String> faultsFrom(String micrograms, Preparation preparation) {
    return begun(
            LabelSheet.label().startingAt(micrograms).protocol(),
            preparation,
            Barrels.U100_0_3_HALF_UNIT,
            new Beginning.AsNew())
        .faults();
  }

  /** 4 mcg are 0.2 mL, 2 mcg are 0.1 mL: the largest volume of this one. */
  @Test
  void a_first_dose_above_the_maximum_of_its_preparation_is_no_first_dose() {
    var small =
        new Preparation(
            ALPROSTADIL_20.id(),
            ALPROSTADIL_20.name(),
            ALPROSTADIL_20.form(),
            ALPROSTADIL_20.ingredients(),
            ml("0.1"),
            ALPROSTADIL_20.preservative());

    assertThat(faultsFrom("4", small)).containsExactly("4 mcg is above the maximum dose.");
    assertThat(faultsFrom("2", small)).isEmpty();
  }
}
