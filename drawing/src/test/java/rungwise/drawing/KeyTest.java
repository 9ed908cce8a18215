package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class KeyTest {

  private static final String WORDS =
      "Now, signed: 0.2 mL (20-unit mark), papaverine hydrochloride 6 mg, alprostadil 2 mcg.";

  @ParameterizedTest
  @ValueSource(ints = {16, 20, 30, 44, 60, 200})
  void a_broken_sentence_loses_nothing_and_keeps_each_number_with_its_unit(int letters) {
    List<String> lines = Key.broken(WORDS, letters);

    assertThat(String.join(" ", lines).replace('\u00A0', ' ')).isEqualTo(WORDS);
    assertThat(lines)
        .allSatisfy(
            line -> {
              assertThat(line.length()).isLessThanOrEqualTo(letters);
              assertThat(line).doesNotStartWith("mL").doesNotStartWith("m");
            });
  }

  @Test
  void a_word_longer_than_a_line_stands_alone() {
    assertThat(Key.broken("a bbbbbbbb c", 4)).containsExactly("a", "bbbbbbbb", "c");
  }
}
