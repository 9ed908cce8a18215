package rungwise.checks.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.JavaSource;
import rungwise.checks.house.JavaSources;
import rungwise.dosing.protocol.CountedOption;

/**
 * What a protocol says by a whole number is described in one file: no other one spells its part of
 * the document or its words, so that a new one is a constant there and the rule that reads it.
 */
final class CountedOptionsTest {

  private static List<String> spelling(String text) {
    return JavaSources.all().stream()
        .filter(JavaSource::isMain)
        .filter(
            source -> source.literals().stream().anyMatch(literal -> literal.text().equals(text)))
        .map(source -> source.file().path())
        .toList();
  }

  @Test
  void no_file_spells_the_part_of_an_option() {
    assertThat(CountedOption.values())
        .allSatisfy(option -> assertThat(spelling(option.part())).isEmpty());
  }

  @Test
  void the_words_of_an_option_stand_in_its_own_file_alone() {
    assertThat(CountedOption.values())
        .allSatisfy(
            option ->
                assertThat(
                        Stream.of(option.words(), option.title()).flatMap(CountedOptionsTest::at))
                    .isNotEmpty()
                    .allMatch(path -> path.endsWith("/CountedOption.java")));
  }

  private static Stream<String> at(String words) {
    return spelling(words).stream();
  }
}
