package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class MarkNumberTest {

  private static final Volume U100_UNIT = Volume.ofMicrolitres(10);
  private static final Volume U40_UNIT = Volume.ofMicrolitres(25);

  @ParameterizedTest
  @CsvSource({"20, 20-unit mark, 200", "12.5, 12.5-unit mark, 125", "0.5, 0.5-unit mark, 5"})
  void a_line_of_a_syringe_stands_for_a_volume(String given, String words, long microlitres) {
    MarkNumber mark = MarkNumber.parse(given).orThrow();

    assertThat(mark).hasToString(words);
    assertThat(mark.number()).isEqualTo(given);
    assertThat(mark.on(U100_UNIT)).isEqualTo(Volume.ofMicrolitres(microlitres));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "20 units|write only the number of the line to which the stopper is drawn",
        "20 U|write only the number of the line to which the stopper is drawn",
        "0.2 mL|that is a volume, and a line is asked for",
        ".5|write a zero before the point, 0.5",
        "12.25|it has more decimal places than can be kept",
        "0|it must be more than 0",
        "501|it is too large, the most that is read is 500",
      })
  void a_refused_line_says_what_to_write(String given, String why) {
    assertThat(MarkNumber.parse(given).faults())
        .containsExactly(
            "\""
                + given
                + "\" is not the number of a syringe line: "
                + why
                + "; enter digits with at most 1 decimal place, such as 20");
  }

  @Test
  void a_line_between_two_microlitres_is_a_fault_of_the_program() {
    MarkNumber half = MarkNumber.parse("0.5").orThrow();

    assertThatThrownBy(() -> half.on(U40_UNIT))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug: the 0.5-unit mark");
    assertThat(MarkNumber.parse("2").orThrow().on(U40_UNIT)).isEqualTo(Volume.ofMicrolitres(50));
    assertThatThrownBy(() -> new MarkNumber(0)).hasMessageStartingWith("bug:");
  }
}
