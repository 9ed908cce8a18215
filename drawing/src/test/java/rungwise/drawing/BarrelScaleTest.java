package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.quantities.Volume;

final class BarrelScaleTest {

  @Test
  void every_fifth_unit_is_numbered_on_the_small_sizes_and_every_tenth_on_the_large() {
    assertThat(numbers(Scales.HALF_UNIT)).containsExactly("5", "10", "15", "20", "25", "30");
    assertThat(numbers(Scales.SMALL)).containsExactly("5", "10", "15", "20", "25", "30");
    assertThat(numbers(Scales.MIDDLE))
        .containsExactly("5", "10", "15", "20", "25", "30", "35", "40", "45", "50");
    assertThat(numbers(Scales.LARGE))
        .isEqualTo(numbers(Scales.LARGE_TWO_UNIT))
        .containsExactly("10", "20", "30", "40", "50", "60", "70", "80", "90", "100");
    assertThat(numbers(Scales.MILLILITRES))
        .containsExactly("0.1", "0.2", "0.3", "0.4", "0.5", "0.6", "0.7", "0.8", "0.9", "1");
  }

  private static List<String> numbers(BarrelScale scale) {
    return scale.lines().stream().filter(scale::isNumberedAt).map(scale.numbers()::at).toList();
  }

  @Test
  void a_scale_has_a_line_for_every_graduation_and_a_zero_line() {
    assertThat(Scales.HALF_UNIT.lines()).hasSize(61);
    assertThat(Scales.SMALL.lines()).hasSize(31);
    assertThat(Scales.MIDDLE.lines()).hasSize(51);
    assertThat(Scales.LARGE.lines()).hasSize(101);
    assertThat(Scales.LARGE_TWO_UNIT.lines()).hasSize(51);
    assertThat(Scales.MILLILITRES.lines())
        .hasSize(101)
        .startsWith(Volume.ZERO)
        .endsWith(Volume.ofMicrolitres(1000));
  }

  @ParameterizedTest
  @CsvSource({
    "300, 0, 50, 41",
    "300, 10, 0, 41",
    "0, 10, 50, 41",
    "300, 20, 50, 41",
    "300, 10, 80, 41",
    "300, 5, 25, 41",
    "300, 10, 50, 0",
  })
  void a_scale_that_cannot_be_printed_is_a_fault_of_the_program(
      long capacity, long graduation, long numberedEvery, int millimetres) {
    assertThatThrownBy(
            () ->
                new BarrelScale(
                    Volume.ofMicrolitres(capacity),
                    Volume.ofMicrolitres(graduation),
                    Volume.ofMicrolitres(numberedEvery),
                    ScaleNumbers.U_100_UNITS,
                    millimetres))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }
}
