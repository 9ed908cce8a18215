package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pressures of gases and pH, as a laboratory prints them. */
final class BloodGasAmountsTest {

  private static GasPressure pressure(String text) {
    return GasPressure.parse(text).found().orElseThrow();
  }

  /** 1 mmHg is 133.322387415 Pa: BS 350, conventional millimetre of mercury. */
  @Test
  void a_mmhg_is_what_its_definition_says_and_is_kept_exactly() {
    BigDecimal pascals = new BigDecimal("13595.1").multiply(new BigDecimal("9.80665"));

    assertThat(BigDecimal.valueOf(GasPressure.ofMmhg(1000).picopascals()).movePointLeft(12))
        .isEqualByComparingTo(pascals);
    assertThat(pressure("133.3 mmHg").compareTo(pressure("17.77 kPa"))).isPositive();
    assertThat(pressure("1 kPa").picopascals()).isEqualTo(1_000_000_000_000_000L);
  }

  /** 30 mmHg is 3.99967 kPa, 60 mmHg 7.99934 kPa: worked by hand from the definition. */
  @Test
  void a_limit_in_mmhg_lies_between_two_readings_in_kpa() {
    assertThat(pressure("3.99 kPa").isLessThan(GasPressure.ofMmhg(30))).isTrue();
    assertThat(pressure("4 kPa").isLessThan(GasPressure.ofMmhg(30))).isFalse();
    assertThat(pressure("8 kPa").isMoreThan(GasPressure.ofMmhg(60))).isTrue();
    assertThat(pressure("7.99 kPa").isMoreThan(GasPressure.ofMmhg(60))).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"25 mmHg,25 mmHg", "24.8 mmhg,24.8 mmHg", "0 mmHg,0 mmHg", "4 kPa,about 30 mmHg"})
  void it_prints_in_mmhg(String typed, String printed) {
    assertThat(pressure(typed)).hasToString(printed);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "25",
        "",
        "25 Pa",
        "25 mbar",
        "25 mmHg kPa",
        "kPa",
        "-1 mmHg",
        "2,5 kPa",
        "4.123 kPa",
        "1501 mmHg",
        "201 kPa",
        "1e3 mmHg",
        ".5 kPa",
        "25 mL"
      })
  void without_its_unit_and_in_no_other_spelling_is_it_read(String typed) {
    assertThat(GasPressure.parse(typed).found()).isEmpty();
    assertThat(GasPressure.parse(typed).faults()).isNotEmpty();
  }

  @Test
  void the_most_that_is_read_is_read() {
    assertThat(GasPressure.parse("1500 mmHg").found()).contains(GasPressure.ofMmhg(1500));
    assertThat(GasPressure.parse("200 kPa").found()).isPresent();
  }

  @ParameterizedTest
  @CsvSource({"7.25,7250", "7.4,7400", "7.40,7400", "7,7000", "7.349,7349"})
  void a_ph_is_kept_in_thousandths(String typed, long thousandths) {
    assertThat(Acidity.parse(typed).found()).contains(new Acidity(thousandths));
  }

  @ParameterizedTest
  @ValueSource(strings = {"7,25", "", "7.2555", "pH 7.25", "14.001", "-7", "7.25 mmHg"})
  void what_is_no_ph_is_not_read(String typed) {
    assertThat(Acidity.parse(typed).found()).isEmpty();
  }

  @Test
  void what_cannot_be_is_not_built() {
    assertThatThrownBy(() -> new GasPressure(-1)).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new Acidity(-1)).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new Acidity(14_001)).hasMessageStartingWith("bug:");
    assertThat(new Acidity(7250).isLessThan(new Acidity(7251))).isTrue();
    assertThat(new Acidity(7250).isLessThan(new Acidity(7250))).isFalse();
    assertThat(new Acidity(7251).isMoreThan(new Acidity(7250))).isTrue();
    assertThat(new Acidity(7250)).hasToString("7.25");
  }
}
