package rungwise.clinic.today;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.clinic.course.Patient;

final class ManWordsTest {

  private static final Patient MAN =
      new Patient("Jørgen Édouard Gößling-Łuk", LocalDate.of(1957, 11, 2), "HL-1017 b");

  private static boolean isFound(String typed) {
    Set<String> words = ManWords.of(MAN);
    List<Set<String>> sets = ManWords.typed(typed);
    return !sets.isEmpty()
        && sets.stream()
            .allMatch(
                set -> words.stream().anyMatch(word -> set.stream().anyMatch(word::startsWith)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Jørgen Édouard Gößling-Łuk",
        "gossling jorgen",
        "GÖSSLING",
        "edou luk",
        "  luk,  EDOUARD ",
        "HL-1017 B",
        "hl1017b",
        "1017",
        "1957-11-02",
        "1957-11-2 jor",
        "2.11.1957",
        "02/11/1957",
        "11/02/1957",
        "goss 2.11.1957 hl-1017"
      })
  void a_man_is_found_by_parts_in_any_order_without_accents_or_case(String typed) {
    assertThat(isFound(typed)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "-",
        "jorgen smith",
        "orgen",
        "1957-11-03",
        "3.11.1957",
        "1018",
        "1957-13-45",
        "2.11.57"
      })
  void nobody_else_is(String typed) {
    assertThat(isFound(typed)).isFalse();
  }

  @Test
  void a_date_that_may_be_meant_in_two_ways_looks_for_both() {
    assertThat(ManWords.typed("02/11/1957")).containsExactly(Set.of("*1957-11-02", "*1957-02-11"));
  }
}
