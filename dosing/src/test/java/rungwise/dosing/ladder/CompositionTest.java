package rungwise.dosing.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rungwise.dosing.LabelWorld.ml;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.TimeSpan;

/** A volume means nothing without the composition that it was written for. */
final class CompositionTest {

  private static final Protocol FOR_30_1_10 =
      LabelSheet.byVolume(
              Set.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL))
          .protocol()
          .asWrittenFor(SamplePreparations.THREE_DRUG);

  /** 0.05 mL of 30/2/20 holds twice the phentolamine and alprostadil of 0.05 mL of 30/1/10. */
  @Test
  void a_protocol_in_volumes_gives_no_schedule_of_another_composition() {
    for (var preparation :
        List.of(SamplePreparations.THREE_DRUG_STRONGER, SamplePreparations.THREE_DRUG_BENNETT)) {
      assertThat(
              LadderProposal.of(FOR_30_1_10, preparation, Barrels.U100_0_5, AetiologyGroup.UNKNOWN)
                  .faults())
          .singleElement()
          .asString()
          .contains("is not written for", "papaverine hydrochloride 30 mg", "10 mcg per mL");
    }
  }

  @Test
  void a_guard_stops_every_dose_of_another_composition_whatever_was_signed() {
    var ladder =
        new Ladder(
            SamplePreparations.THREE_DRUG_STRONGER,
            Barrels.U100_0_5,
            List.of(ml("0.05")),
            ml("0.5"));
    var question =
        new LabelWorld()
            .with(SamplePreparations.THREE_DRUG_STRONGER)
            .by(FOR_30_1_10)
            .question(ladder);

    assertThat(Dosing.advise(question).courseVerdicts())
        .anyMatch(one -> one.rule() == GuardRule.PROTOCOL_NOT_FOR && one.isHardStop());
    assertThat(Dosing.advise(question).decision().proposed()).isEmpty();
  }

  @Test
  void no_protocol_can_be_made_that_passes_a_floor() {
    assertThatThrownBy(() -> LabelSheet.label().spacing(23).protocol())
        .hasMessageContaining("SPACING");
    assertThatThrownBy(
            () ->
                LabelSheet.label()
                    .secondDose(
                        rule ->
                            new Protocol.SameVisit(
                                TimeSpan.ofMinutes(61), true, Optional.empty(), rule.source()))
                    .protocol())
        .hasMessageContaining("VISIT_WINDOW");
    assertThatThrownBy(
            () ->
                FOR_30_1_10.with(
                    FOR_30_1_10.more().withSameVisit(LabelSheet.label().protocol().sameVisit())))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Worst case by hand: half a unit and 1.5 % of 0.5 mL and 2 % of 0.05 mL are 27 % of 0.05 mL. */
  @Test
  void a_first_dose_that_is_hard_to_measure_is_said_before_it_is_signed_with_a_better_syringe() {
    assertThat(notesOn(Barrels.U100_0_5))
        .anyMatch(
            note ->
                note.contains("0.05 mL is hard to measure")
                    && note.contains("27 percent")
                    && note.contains("A 0.3 mL U-100 syringe"));
    assertThat(notesOn(Barrels.U100_0_3_HALF_UNIT))
        .noneMatch(note -> note.contains("hard to measure"));
  }

  private static List<String> notesOn(Barrel barrel) {
    return LadderProposal.of(
            FOR_30_1_10, SamplePreparations.THREE_DRUG, barrel, AetiologyGroup.UNKNOWN)
        .orThrow()
        .notes();
  }
}
