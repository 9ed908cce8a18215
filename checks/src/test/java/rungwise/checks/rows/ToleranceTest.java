package rungwise.checks.rows;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.checks.topics.Answer;
import rungwise.checks.topics.InputFault;

final class ToleranceTest {

  private static boolean accepts(String tolerance, Answer answer, String expected) {
    return Tolerance.parse(tolerance).accepts(answer, expected);
  }

  private static Answer number(String value) {
    return Answer.number(new BigDecimal(value));
  }

  private static Answer numbers(String first, String second) {
    return new Answer.Numbers(List.of(new BigDecimal(first), new BigDecimal(second)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      textBlock =
          """
          exact                          ! 1.0      ! 1      ! true
          exact mcg                      ! 500      ! 500    ! true
          exact                          ! 1.001    ! 1      ! false
          1e-9                           ! 0.01     ! 0.01   ! true
          1e-9                           ! 0.010001 ! 0.01   ! false
          0.5                            ! 10.5     ! 10     ! true
          0.5                            ! 10.51    ! 10     ! false
          0.5                            ! 9.5      ! 10     ! true
          0.003 (label prints 0.06)      ! 0.0625   ! 0.06   ! true
          2.5 mcg                        ! 2.5      ! 0      ! true
          [33.0,53.2]                    ! 53.2     ! 41.9   ! true
          [33.0,53.2]                    ! 53.3     ! 41.9   ! false
          [83,92] published CI           ! 82.9     ! 88     ! false
          30 pct relative (SD not found) ! 7.5      ! 5.8    ! true
          30 pct relative (SD not found) ! 7.6      ! 5.8    ! false
          lower bound                    ! 71       ! >70    ! true
          lower bound                    ! 70       ! >70    ! false
          """)
  void one_number_is_held_against_one(
      String tolerance, String answer, String expected, boolean isAccepted) {
    assertThat(accepts(tolerance, number(answer), expected)).isEqualTo(isAccepted);
  }

  @Test
  void several_numbers_are_held_one_against_one() {
    assertThat(accepts("exact", numbers("0.5", "1"), "0.5|1")).isTrue();
    assertThat(accepts("exact", numbers("2.5", "5"), "2.5..5")).isTrue();
    assertThat(accepts("exact", numbers("1", "0.5"), "0.5|1")).isFalse();
    assertThat(accepts("exact", numbers("0.5", "1"), "0.5|1|2")).isFalse();
    assertThat(accepts("5 each", numbers("80", "12"), "75|17")).isTrue();
    assertThat(accepts("5 each", numbers("80", "11"), "75|17")).isFalse();
  }

  @Test
  void each_number_can_have_its_own_distance() {
    assertThat(accepts("0.05|0.01", numbers("6.38", "1.379"), "6.33|1.369")).isTrue();
    assertThat(accepts("0.05|0.01", numbers("6.38", "1.38"), "6.33|1.369")).isFalse();
  }

  @Test
  void named_numbers_are_found_by_name_and_a_missing_one_fails() {
    var answer =
        new Answer.Named(Map.of("a_mg", new BigDecimal("3"), "b_mcg", new BigDecimal("0.05")));

    assertThat(accepts("0.0005 each", answer, "b_mcg=0.05;a_mg=3.0005")).isTrue();
    assertThat(accepts("0.0005 each", answer, "a_mg=3.001")).isFalse();
    assertThat(accepts("0.0005 each", answer, "c_mg=3")).isFalse();
  }

  @Test
  void words_are_the_same_or_contained() {
    assertThat(accepts("exact", Answer.words("refuse"), "refuse")).isTrue();
    assertThat(accepts("exact", Answer.words("refuse."), "refuse")).isFalse();
    assertThat(accepts("contains", Answer.words("Priapism (disorder)"), "Priapism")).isTrue();
    assertThat(accepts("contains", Answer.words("Disorder"), "Priapism")).isFalse();
  }

  @Test
  void a_number_is_not_accepted_where_words_are_expected() {
    assertThat(accepts("exact", number("1"), "refuse")).isFalse();
    assertThat(accepts("exact", Answer.words("1.0"), "1")).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "about 5", "-1", "five", "[1;2]"})
  void a_tolerance_that_is_not_understood_is_a_fault(String tolerance) {
    assertThatThrownBy(() -> Tolerance.parse(tolerance)).isInstanceOf(InputFault.class);
  }
}
