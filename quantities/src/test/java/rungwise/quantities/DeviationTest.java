package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class DeviationTest {

  /** Ratios of small whole numbers: only the last bits of floating point are lost. */
  private static final double FLOATING_POINT = 1e-12;

  private static ExactVolume microlitres(long count) {
    return new ExactVolume(count, 1);
  }

  @Test
  void the_50_unit_mark_for_the_5_unit_mark_is_ten_times_the_dose() {
    var deviation = new Deviation(microlitres(50), microlitres(500));

    assertThat(deviation.factor()).isEqualTo(10);
    assertThat(deviation.percent()).isEqualTo(900);
  }

  @Test
  void rounding_62_5_microlitres_down_to_60_loses_4_percent() {
    var deviation = new Deviation(new ExactVolume(125, 2), microlitres(60));

    assertThat(deviation.percent()).isCloseTo(-4, within(FLOATING_POINT));
  }

  @Test
  void a_volume_on_a_line_deviates_by_nothing() {
    assertThat(new Deviation(microlitres(200), microlitres(200)).percent()).isZero();
  }

  @Test
  void nothing_drawn_is_a_loss_of_all() {
    assertThat(new Deviation(microlitres(200), microlitres(0)).percent()).isEqualTo(-100);
  }

  @Test
  void a_deviation_from_nothing_is_refused() {
    assertThatThrownBy(() -> new Deviation(microlitres(0), microlitres(10)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }
}
