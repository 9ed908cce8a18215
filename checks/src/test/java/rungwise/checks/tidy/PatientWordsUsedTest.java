package rungwise.checks.tidy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.checks.house.JavaSources;
import rungwise.clinic.words.PatientWord;

/** A text for patients that nothing says is removed, in every language. */
final class PatientWordsUsedTest {

  private static final String PROGRAM =
      JavaSources.all().stream()
          .map(source -> source.file())
          .filter(file -> file.path().contains("/src/main/"))
          .filter(file -> !file.path().endsWith("/PatientWord.java"))
          .map(file -> file.text())
          .collect(Collectors.joining("\n"));

  @ParameterizedTest
  @EnumSource(PatientWord.class)
  void something_says_it(PatientWord word) {
    assertThat(Pattern.compile("\\b" + word.name() + "\\b").matcher(PROGRAM).find()).isTrue();
  }
}
