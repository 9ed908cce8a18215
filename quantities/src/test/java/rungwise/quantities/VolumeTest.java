package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class VolumeTest {

  private static final long SEED = 20_260_101;
  private static final int CASES = 20_000;
  private static final Volume MOST = Volume.ofMicrolitres(1_000_000);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0|0 mL",
        "1|0.001 mL",
        "5|0.005 mL",
        "50|0.05 mL",
        "200|0.2 mL",
        "205|0.205 mL",
        "1000|1 mL",
        "10000|10 mL",
        "1000000|1,000 mL",
      })
  void a_volume_prints_with_its_unit_and_no_zero_too_many(long microlitres, String text) {
    assertThat(Volume.ofMicrolitres(microlitres)).hasToString(text);
  }

  @Test
  void every_volume_below_a_litre_reads_back_as_it_was_printed() {
    var random = new Random(SEED);

    for (int i = 0; i < CASES; i++) {
      Volume volume = Volume.ofMicrolitres(1 + random.nextLong(999_999));

      assertThat(Volume.parse(volume.toString())).isEqualTo(Reading.of(volume));
      assertThat(Volume.parseMillilitres(volume.millilitresText())).isEqualTo(Reading.of(volume));
      assertThat(new BigDecimal(volume.millilitresText()).movePointRight(3))
          .isEqualByComparingTo(BigDecimal.valueOf(volume.microlitres()));
    }
  }

  @Test
  void the_text_of_a_form_field_is_read_back_even_from_a_thousand_on() {
    assertThat(MOST.millilitresText()).isEqualTo("1000");
    assertThat(Volume.parseMillilitres(MOST.millilitresText())).isEqualTo(Reading.of(MOST));
  }

  @Test
  void volumes_add_and_subtract_without_rounding() {
    Volume tenth = Volume.ofMicrolitres(100);

    assertThat(tenth.plus(Volume.ofMicrolitres(200))).isEqualTo(Volume.ofMicrolitres(300));
    assertThat(tenth.minus(tenth)).isEqualTo(Volume.ZERO);
    assertThat(tenth.times(3)).isEqualTo(Volume.ofMicrolitres(300));
    assertThat(tenth.ratioTo(Volume.ofMicrolitres(400))).isEqualTo(0.25);
  }

  @Test
  void a_volume_is_never_negative() {
    Volume small = Volume.ofMicrolitres(1);

    assertThatThrownBy(() -> Volume.ofMicrolitres(-1)).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> small.minus(Volume.ofMicrolitres(2))).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> small.times(-1)).hasMessageStartingWith("bug:");
  }

  @Test
  void a_sum_that_is_too_large_is_refused_and_does_not_wrap() {
    Volume huge = Volume.ofMicrolitres(Long.MAX_VALUE);

    assertThatThrownBy(() -> huge.plus(Volume.ofMicrolitres(1)))
        .isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> huge.times(2)).isInstanceOf(ArithmeticException.class);
  }

  @Test
  void comparing_and_equality_agree() {
    Volume less = Volume.ofMicrolitres(199);
    Volume more = Volume.ofMicrolitres(200);

    assertThat(less).isLessThan(more).isNotEqualTo(more);
    assertThat(more).isEqualByComparingTo(Volume.parse("0.2 mL").orThrow());
    assertThat(more).isEqualTo(Volume.parse("0.2 mL").orThrow());
    assertThat(more.isMoreThan(less)).isTrue();
    assertThat(more.isMoreThan(more)).isFalse();
    assertThat(less.isLessThan(more)).isTrue();
    assertThat(less.isLessThan(less)).isFalse();
  }

  @Test
  void a_multiple_of_a_step_is_told_from_a_volume_between_two_steps() {
    Volume step = Volume.ofMicrolitres(10);

    assertThat(Volume.ofMicrolitres(200).isMultipleOf(step)).isTrue();
    assertThat(Volume.ofMicrolitres(205).isMultipleOf(step)).isFalse();
    assertThat(Volume.ZERO.isMultipleOf(step)).isTrue();
  }

  @Test
  void a_step_or_a_divisor_of_zero_is_a_fault_of_the_program() {
    Volume volume = Volume.ofMicrolitres(10);

    assertThatThrownBy(() -> volume.isMultipleOf(Volume.ZERO))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> volume.ratioTo(Volume.ZERO))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }

  @Test
  void a_form_names_no_volume_below_zero_or_above_a_litre() {
    assertThat(Volume.chosen(1_000_000)).contains(Volume.ofMicrolitres(1_000_000));
    assertThat(Volume.chosen(0)).contains(Volume.ZERO);
    assertThat(Volume.chosen(-1)).isEmpty();
    assertThat(Volume.chosen(1_000_001)).isEmpty();
    assertThat(Volume.chosen(Long.MAX_VALUE)).isEmpty();
  }
}
