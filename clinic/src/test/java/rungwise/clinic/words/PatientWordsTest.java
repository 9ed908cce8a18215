package rungwise.clinic.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every key has a text in every language, with the same gaps. */
final class PatientWordsTest {

  private static final Pattern GAP = Pattern.compile("\\{\\w+}");

  private static Set<String> gaps(PatientWord word, Language language) {
    return GAP.matcher(PatientWords.in(language).pattern(word))
        .results()
        .map(found -> found.group())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @ParameterizedTest
  @EnumSource(PatientWord.class)
  void all_languages_have_the_same_gaps(PatientWord word) {
    assertThat(gaps(word, Language.SPANISH)).isEqualTo(gaps(word, Language.ENGLISH));
  }

  @Test
  void every_gap_stands_in_a_text() {
    Set<String> used =
        Arrays.stream(PatientWord.values())
            .flatMap(word -> gaps(word, Language.ENGLISH).stream())
            .collect(Collectors.toSet());
    assertThat(Stream.of(Slot.values()).map(Slot::written).toList())
        .containsExactlyInAnyOrderElementsOf(used);
  }

  /** Two texts that are alike in two languages have been forgotten in one, but for names. */
  @ParameterizedTest
  @EnumSource(PatientWord.class)
  void a_sentence_is_translated(PatientWord word) {
    if (!word.isPart()) {
      assertThat(PatientWords.in(Language.SPANISH).pattern(word))
          .isNotEqualTo(PatientWords.in(Language.ENGLISH).pattern(word));
    }
  }

  @Test
  void a_gap_is_filled_with_what_was_given_and_with_nothing_else() {
    PatientWords english = PatientWords.in(Language.ENGLISH);
    assertThat(english.text(PatientWord.SHEET_TIME_WEEK, Map.of(Slot.MAX_WEEK, "3 $1 {name}")))
        .isEqualTo("Take no more than 3 $1 {name} shots in 7 days.");
    assertThatThrownBy(() -> english.text(PatientWord.SHEET_TIME_WEEK))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("{max_week}");
  }

  @Test
  void days_are_written_as_each_language_writes_them() {
    LocalDate day = LocalDate.of(2027, 3, 5);
    assertThat(Language.ENGLISH.weekdayAnd(day)).isEqualTo("Friday, 5 March 2027");
    assertThat(Language.SPANISH.weekdayAnd(day)).isEqualTo("viernes 5 de marzo de 2027");
    assertThat(Language.ENGLISH.date(day)).isEqualTo("5 March 2027");
    assertThat(Language.SPANISH.date(day)).isEqualTo("5 de marzo de 2027");
  }
}
