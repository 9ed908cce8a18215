package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.quantities.Volume;

final class MarkWordsTest {

  private static final List<String> WORDS =
      List.of("one", "two", "three", "four", "five", "six", "seven", "eight", "nine");

  @Test
  void the_words_are_those_a_teacher_would_say() {
    assertThat(words(Scales.MIDDLE, 200)).isEqualTo("the line marked 20");
    assertThat(words(Scales.MIDDLE, 120)).isEqualTo("two small lines past the 10");
    assertThat(words(Scales.MIDDLE, 110)).isEqualTo("one small line past the 10");
    assertThat(words(Scales.MIDDLE, 40)).isEqualTo("four small lines past the zero line");
    assertThat(words(Scales.HALF_UNIT, 125)).isEqualTo("five small lines past the 10");
    assertThat(words(Scales.HALF_UNIT, 5)).isEqualTo("one small line past the zero line");
    assertThat(words(Scales.LARGE, 190)).isEqualTo("nine small lines past the 10");
    assertThat(words(Scales.LARGE, 1000)).isEqualTo("the line marked 100");
    assertThat(words(Scales.LARGE_TWO_UNIT, 640)).isEqualTo("two small lines past the 60");
    assertThat(words(Scales.MILLILITRES, 200)).isEqualTo("the line marked 0.2");
    assertThat(words(Scales.MILLILITRES, 220)).isEqualTo("two small lines past the 0.2");
    assertThat(words(Scales.MILLILITRES, 1000)).isEqualTo("the line marked 1");
  }

  /**
   * The rule, told another way: walk from line to line, away from the needle, remember the last
   * number that was passed and count the lines since then.
   */
  @ParameterizedTest
  @CsvSource({
    "300, 5, 10, 5, 41",
    "300, 10, 5, 5, 41",
    "500, 10, 5, 5, 43",
    "1000, 10, 10, 10, 57",
    "1000, 20, 5, 10, 57",
  })
  void every_line_of_every_unit_syringe_is_found_by_counting(
      int capacity, int step, int linesPerNumber, int unitsPerNumber, int millimetres) {
    BarrelScale scale =
        Scales.all().stream()
            .filter(one -> one.capacity().microlitres() == capacity)
            .filter(one -> one.graduation().microlitres() == step)
            .filter(one -> one.numbers() == ScaleNumbers.U_100_UNITS)
            .findFirst()
            .orElseThrow();
    assertThat(scale.millimetres()).isEqualTo(millimetres);
    String last = "zero line";
    int passed = 0;
    int units = 0;

    for (int position = step; position <= capacity; position += step) {
      passed++;
      String expected;
      if (passed == linesPerNumber) {
        units += unitsPerNumber;
        last = Integer.toString(units);
        passed = 0;
        expected = "the line marked " + last;
      } else {
        String plural = passed == 1 ? " small line past the " : " small lines past the ";
        expected = WORDS.get(passed - 1) + plural + last;
      }

      assertThat(words(scale, position)).isEqualTo(expected);
    }
    assertThat(units).isEqualTo(capacity / 10);
  }

  @ParameterizedTest
  @MethodSource("rungwise.drawing.Scales#all")
  void no_two_lines_of_a_syringe_have_the_same_words(BarrelScale scale) {
    List<String> words =
        Scales.everyDose(scale).stream().map(dose -> MarkWords.of(scale, dose.volume())).toList();

    assertThat(words).doesNotHaveDuplicates().hasSize(scale.lines().size() - 1);
  }

  @Test
  void a_volume_without_a_line_has_no_words() {
    assertRefused(Scales.SMALL, 0);
    assertRefused(Scales.SMALL, 5);
    assertRefused(Scales.SMALL, 205);
    assertRefused(Scales.SMALL, 310);
    assertRefused(Scales.LARGE_TWO_UNIT, 10);
  }

  private static void assertRefused(BarrelScale scale, long microlitres) {
    assertThatThrownBy(() -> words(scale, microlitres))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }

  private static String words(BarrelScale scale, long microlitres) {
    return MarkWords.of(scale, Volume.ofMicrolitres(microlitres));
  }
}
