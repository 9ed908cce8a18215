package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;
import rungwise.dosing.source.Citation;

/** The document of sources and the code cite the same texts. */
final class SourcesTest {

  @Test
  void every_text_that_is_cited_is_listed_and_nothing_else() {
    List<List<String>> listed = MarkdownTable.of(Repository.file("docs/sources.md")).rows();

    assertThat(listed)
        .containsExactlyInAnyOrderElementsOf(
            Arrays.stream(Citation.values())
                .map(one -> List.of("`" + one.id() + "`", one.reference()))
                .toList());
  }

  @Test
  void every_id_is_given_once() {
    assertThat(Citation.values()).extracting(Citation::id).doesNotHaveDuplicates();
  }
}
