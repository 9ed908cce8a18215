package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;

/** Every decision is written down in one form. */
final class DecisionsTest {

  private static final String FOLDER = "docs/decisions/";

  private static final List<String> HEADINGS =
      List.of(
          "## Status", "## Context", "## Decision", "## Consequences", "## What would reopen it");

  private static List<TextFile> decisions() {
    return Repository.textFilesBelow(FOLDER);
  }

  private static String number(TextFile file) {
    return file.path().replace(FOLDER, "").replaceFirst("-.*$", "");
  }

  @Test
  void every_decision_has_the_same_five_headings() {
    assertThat(decisions())
        .isNotEmpty()
        .allSatisfy(
            file ->
                assertThat(file.lines().stream().filter(line -> line.startsWith("## ")))
                    .as(file.path())
                    .containsExactlyElementsOf(HEADINGS));
  }

  @Test
  void no_part_of_a_decision_is_empty() {
    assertThat(decisions())
        .allSatisfy(
            file ->
                assertThat(file.text())
                    .as(file.path())
                    .doesNotContainPattern("\n## [^\n]*\\s*\n## "));
  }

  @Test
  void the_title_of_a_decision_starts_with_the_number_of_its_file() {
    assertThat(decisions())
        .allSatisfy(
            file -> assertThat(file.lines().getFirst()).startsWith("# " + number(file) + " "));
  }

  @Test
  void the_numbers_are_unique_and_without_gaps() {
    List<String> expected =
        IntStream.rangeClosed(1, decisions().size()).mapToObj("%04d"::formatted).toList();

    assertThat(decisions().stream().map(DecisionsTest::number)).containsExactlyElementsOf(expected);
  }
}
