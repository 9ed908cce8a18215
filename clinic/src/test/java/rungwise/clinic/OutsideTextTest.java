package rungwise.clinic;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.clinic.course.Patient;
import rungwise.quantities.Reading;

class OutsideTextTest {

  private static final int MOST = 100;
  private static final String NAME = "Corvin Adeyemi";

  /** Characters that show nothing, by their names in the Unicode Standard. */
  private static final List<String> UNSEEN =
      List.of(
          "NULL",
          "BACKSPACE",
          "CHARACTER TABULATION",
          "LINE FEED (LF)",
          "ESCAPE",
          "DELETE",
          "SOFT HYPHEN",
          "COMBINING GRAPHEME JOINER",
          "ARABIC LETTER MARK",
          "HANGUL CHOSEONG FILLER",
          "HANGUL JUNGSEONG FILLER",
          "KHMER VOWEL INHERENT AQ",
          "MONGOLIAN VOWEL SEPARATOR",
          "ZERO WIDTH SPACE",
          "ZERO WIDTH NON-JOINER",
          "ZERO WIDTH JOINER",
          "LEFT-TO-RIGHT MARK",
          "RIGHT-TO-LEFT MARK",
          "LINE SEPARATOR",
          "PARAGRAPH SEPARATOR",
          "LEFT-TO-RIGHT EMBEDDING",
          "RIGHT-TO-LEFT OVERRIDE",
          "POP DIRECTIONAL FORMATTING",
          "WORD JOINER",
          "INVISIBLE TIMES",
          "FIRST STRONG ISOLATE",
          "BRAILLE PATTERN BLANK",
          "HANGUL FILLER",
          "VARIATION SELECTOR-16",
          "ZERO WIDTH NO-BREAK SPACE",
          "HALFWIDTH HANGUL FILLER",
          "LANGUAGE TAG");

  static List<String> tricks() {
    var tricks = new ArrayList<String>();
    for (String name : UNSEEN) {
      String unseen = Character.toString(Character.codePointOf(name));
      tricks.add("Cor" + unseen + "vin Adeyemi");
      tricks.add("Corvin " + unseen + "Adeyemi");
      tricks.add("Corvin Adeyem" + unseen + "i");
    }
    tricks.add("Corvin Adeyemi" + Character.toString(0xE001) + "x");
    tricks.add("Corvin Adeyemi" + Character.toString(0x0378) + "x");
    tricks.add("Cor\uD800vin Adeyemi");
    return tricks;
  }

  @ParameterizedTest
  @MethodSource("tricks")
  void a_name_with_something_that_nobody_can_see_is_refused(String trick) {
    Reading<String> reading = OutsideText.line("His full name", trick, MOST);

    assertThat(reading.found()).isEmpty();
    assertThat(reading.faults())
        .singleElement()
        .asString()
        .startsWith("His full name holds a character that nobody can see (U+");
  }

  @Test
  void what_was_kept_with_such_a_character_has_the_key_of_its_look() {
    var plain = new Patient(NAME, LocalDate.of(1957, 11, 2), "HL-1017");

    assertThat(new Patient("Corvin\u200B Adeyemi", plain.birthDate(), "HL\u200B-1017"))
        .satisfies(other -> assertThat(other.nameKey()).isEqualTo(plain.nameKey()))
        .satisfies(other -> assertThat(other.recordKey()).isEqualTo(plain.recordKey()));
    assertThat(Patient.recordKeyOf("\uFF28\uFF2C-1017\u200D")).isEqualTo(plain.recordKey());
  }

  static Stream<String> names() {
    return Stream.concat(
        InventedNames.OF_MANY_SCRIPTS.stream(),
        Stream.of("Nguyễn Văn Sơn", "O’Brien-Sample", "ᏣᎳᎩ"));
  }

  @ParameterizedTest
  @MethodSource("names")
  void a_name_is_kept_as_it_is_written(String name) {
    assertThat(OutsideText.line("His full name", " " + name + " ", MOST).orThrow()).isEqualTo(name);
    assertThat(OutsideText.mixesScripts(name)).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"Cоrvin Adeyemi", "Corvin Αdeyemi", "HL-1О17"})
  void letters_that_look_alike_from_another_script_are_pointed_out(String text) {
    assertThat(OutsideText.mixesScripts(text)).isTrue();
  }

  @Test
  void marks_are_not_stacked_over_the_lines_around_them() {
    String stacked = "Z" + "\u0301".repeat(5) + "oe";

    assertThat(OutsideText.line("His full name", stacked, MOST).faults()).hasSize(1);
    assertThat(OutsideText.line("His full name", "Z\u0302\u0301oe", MOST).found()).isPresent();
  }

  @Test
  void a_line_is_neither_empty_nor_too_long() {
    assertThat(OutsideText.line("His full name", " ", MOST).faults())
        .containsExactly("His full name is missing: enter 1 to 100 characters.");
    assertThat(OutsideText.line("His full name", "a".repeat(101), MOST).faults())
        .containsExactly("His full name has 101 characters: enter at most 100.");
    assertThat(OutsideText.line("His full name", "a".repeat(100), MOST).found()).isPresent();
  }
}
