package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class MassTest {

  private static final long SEED = 20_260_102;
  private static final int CASES = 20_000;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1|0.000001 mcg",
        "2500000|2.5 mcg",
        "999999999|999.999999 mcg",
        "1000000000|1 mg",
        "6000000000|6 mg",
        "200000000|200 mcg",
      })
  void a_mass_prints_in_milligrams_from_one_milligram_on(long picograms, String text) {
    assertThat(Mass.ofPicograms(picograms)).hasToString(text);
  }

  @Test
  void a_mass_prints_in_the_unit_that_is_asked_for() {
    Mass mass = Mass.parse("2.5 mcg").orThrow();

    assertThat(mass.in(MassUnit.MICROGRAM)).isEqualTo("2.5 mcg");
    assertThat(mass.in(MassUnit.MILLIGRAM)).isEqualTo("0.0025 mg");
    assertThat(Mass.parse("30 mg").orThrow().in(MassUnit.MICROGRAM)).isEqualTo("30,000 mcg");
  }

  @Test
  void every_mass_reads_back_as_it_was_printed_in_either_unit() {
    var random = new Random(SEED);

    for (int i = 0; i < CASES; i++) {
      Mass small = Mass.ofPicograms(1 + random.nextLong(999_999_999));
      Mass large = Mass.ofPicograms(1 + random.nextLong(999_999_999_999L));

      assertThat(Mass.parse(small.toString())).isEqualTo(Reading.of(small));
      assertThat(Mass.parse(large.toString())).isEqualTo(Reading.of(large));
      assertThat(Mass.parse(large.in(MassUnit.MILLIGRAM))).isEqualTo(Reading.of(large));
    }
  }

  @Test
  void the_same_number_in_milligrams_is_a_thousand_times_the_mass_in_micrograms() {
    Mass micrograms = Mass.parseMicrograms("2.5").orThrow();
    Mass milligrams = Mass.parseMilligrams("2.5").orThrow();

    assertThat(milligrams.picograms()).isEqualTo(1000 * micrograms.picograms());
    assertThat(milligrams.ratioTo(micrograms)).isEqualTo(1000.0);
  }

  @Test
  void a_unit_that_was_written_wins_over_the_unit_of_the_field() {
    assertThat(Mass.parseMicrograms("2.5 mg")).isEqualTo(Mass.parse("2.5 mg"));
    assertThat(Mass.parseMilligrams("2.5 mcg")).isEqualTo(Mass.parse("2.5 mcg"));
  }

  @Test
  void masses_compare_as_amounts_and_not_as_texts() {
    Mass tenMicrograms = Mass.parse("10 mcg").orThrow();
    Mass hundredthOfAMilligram = Mass.parse("0.01 mg").orThrow();

    assertThat(tenMicrograms).isEqualTo(hundredthOfAMilligram);
    assertThat(tenMicrograms).isEqualByComparingTo(hundredthOfAMilligram);
    assertThat(tenMicrograms).isLessThan(Mass.parse("0.1 mg").orThrow());
    assertThat(Mass.parse("1 mg").orThrow().isMoreThan(tenMicrograms)).isTrue();
    assertThat(tenMicrograms.isMoreThan(hundredthOfAMilligram)).isFalse();
  }

  @Test
  void a_mass_is_never_negative_and_a_sum_never_wraps() {
    assertThatThrownBy(() -> Mass.ofPicograms(-1)).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> Mass.ofPicograms(Long.MAX_VALUE).plus(Mass.ofPicograms(1)))
        .isInstanceOf(ArithmeticException.class);
  }

  @Test
  void a_ratio_to_no_mass_is_a_fault_of_the_program() {
    assertThatThrownBy(() -> Mass.ofPicograms(1).ratioTo(Mass.ofPicograms(0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }
}
