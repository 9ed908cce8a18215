package rungwise.checks.hazards;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.Marking;
import rungwise.quantities.DoseTextLint;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

final class HazardControlsTest {

  private static final Volume TENTH_OF_A_MILLILITRE = Volume.ofMicrolitres(100);
  private static final Volume HALF_UNIT_VOLUME = Volume.ofMicrolitres(125);
  private static final Volume BEYOND_THE_SMALL = Volume.ofMicrolitres(350);

  static List<Preparation> preparations() {
    return SamplePreparations.all();
  }

  @Test
  void no_syringe_of_another_scale_can_be_chosen() {
    assertThat(Barrels.all())
        .filteredOn(barrel -> barrel.marking() instanceof Marking.UnitLines)
        .isNotEmpty()
        .allSatisfy(barrel -> assertThat(barrel.words()).contains("U-100"));
    assertThat(Barrels.all()).noneMatch(barrel -> barrel.words().matches(".*U-(40|500).*"));
  }

  @Test
  void a_dose_stands_on_a_line_of_its_own_syringe() {
    var drug = SamplePreparations.THREE_DRUG;

    assertThat(new Dose(HALF_UNIT_VOLUME, drug, Barrels.U100_0_3_HALF_UNIT).volumeAndMark())
        .isEqualTo("0.125 mL (12.5-unit mark on a 0.3 mL U-100 syringe with half-unit lines)");
    assertThatThrownBy(() -> new Dose(HALF_UNIT_VOLUME, drug, Barrels.U100_0_3))
        .hasMessageContaining("0.125 mL is on no line");
    assertThatThrownBy(() -> new Dose(BEYOND_THE_SMALL, drug, Barrels.U100_0_3))
        .hasMessageContaining("0.35 mL is on no line");
    assertThat(new Dose(BEYOND_THE_SMALL, drug, Barrels.U100_0_5).volumeAndMark())
        .isEqualTo("0.35 mL (35-unit mark on a 0.5 mL U-100 syringe)");
  }

  @Test
  void a_step_of_one_strength_is_no_step_of_another() {
    var weaker = SamplePreparations.ALPROSTADIL_20;
    var stronger = SamplePreparations.ALPROSTADIL_40;
    var history = History.of(List.of(injectionOf(weaker)));

    assertThat(history.lastOf(weaker)).isPresent();
    assertThat(history.lastOf(stronger)).isEmpty();
    assertThat(stronger.contentOf(TENTH_OF_A_MILLILITRE)).isEqualTo("alprostadil 4 mcg");
    assertThat(weaker.contentOf(TENTH_OF_A_MILLILITRE)).isEqualTo("alprostadil 2 mcg");
  }

  private static Injection injectionOf(Preparation preparation) {
    return new Injection(
        1,
        Instant.parse("2026-01-05T20:00:00Z"),
        preparation,
        TENTH_OF_A_MILLILITRE,
        Optional.of(TENTH_OF_A_MILLILITRE),
        Grade.USABLE,
        new SoftAfter.Exactly(TimeSpan.ofMinutes(45)),
        SimpleCauses.NONE_FOUND,
        Injection.Setting.CLINIC_OBSERVED,
        Stock.NOT_RECORDED);
  }

  @ParameterizedTest
  @MethodSource("preparations")
  void a_dose_never_prints_without_its_composition(Preparation preparation) {
    String printed = new Dose(TENTH_OF_A_MILLILITRE, preparation, Barrels.U100_0_5).toString();

    assertThat(printed)
        .startsWith("0.1 mL (10-unit mark on a 0.5 mL U-100 syringe)")
        .contains(preparation.composition())
        .doesNotContain(preparation.name());
    assertThat(preparation.ingredients())
        .extracting(Ingredient::component)
        .allSatisfy(component -> assertThat(printed).contains(component.fullName()));
  }

  @ParameterizedTest
  @MethodSource("preparations")
  void every_dose_on_every_line_is_written_so_that_it_cannot_be_misread(Preparation preparation) {
    for (Barrel barrel : Barrels.all()) {
      barrel.marking().graduationVolume().ifPresent(step -> readAll(preparation, barrel, step));
    }
  }

  private static void readAll(Preparation preparation, Barrel barrel, Volume step) {
    for (Volume volume = step; barrel.hasMarkAt(volume); volume = volume.plus(step)) {
      String printed = new Dose(volume, preparation, barrel).toString();

      assertThat(DoseTextLint.faultsInDose(printed)).as(printed).isEmpty();
    }
  }
}
