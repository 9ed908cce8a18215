package rungwise.dosing.known;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.UnitSpacing;

final class UnitSpacingTest {

  /** The reference figures are printed with four decimals. */
  private static final double AS_PRINTED = 0.0001;

  @Test
  void thirty_units_on_41_millimetres_stand_1_3667_millimetres_apart() {
    var spacing = UnitSpacing.of(Barrels.U100_0_3).orElseThrow();

    assertThat(spacing.millimetresPerUnit()).isCloseTo(1.3667, within(AS_PRINTED));
    assertThat(spacing.unitsPerMillimetre()).isCloseTo(0.7317, within(AS_PRINTED));
  }

  @Test
  void a_smaller_syringe_forgives_a_slip_of_the_eye_more() {
    double small = UnitSpacing.of(Barrels.U100_0_3).orElseThrow().unitsPerMillimetre();
    double middle = UnitSpacing.of(Barrels.U100_0_5).orElseThrow().unitsPerMillimetre();
    double large = UnitSpacing.of(Barrels.U100_1).orElseThrow().unitsPerMillimetre();

    assertThat(small).isLessThan(middle);
    assertThat(middle).isLessThan(large);
  }

  @Test
  void a_device_without_unit_lines_has_no_spacing() {
    assertThat(UnitSpacing.of(Barrels.MILLILITRE_1)).isEmpty();
    assertThat(UnitSpacing.of(Barrels.CARTRIDGE_1)).isEmpty();
  }

  @Test
  void a_scale_without_length_is_refused() {
    assertThatThrownBy(() -> new UnitSpacing(0, 30)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new UnitSpacing(41, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new UnitSpacing(41, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
