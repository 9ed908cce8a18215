package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;
import rungwise.checks.house.TextFile;
import rungwise.files.ProtocolFile;
import rungwise.files.SampleProtocols;

/** The guide to protocol documents names the parts that the reader knows, and its example works. */
final class ProtocolGuideTest {

  private static final TextFile GUIDE = Repository.file("docs/guide/protocol-document.md");
  private static final Pattern QUOTED = Pattern.compile("`([^`]+)`");
  private static final Pattern KNOWN = Pattern.compile("known are \\[([^\\]]+)\\]");
  private static final Pattern EXAMPLE = Pattern.compile("(?s)```yaml\n(.*?)```");

  private static List<String> found(Pattern pattern, String text) {
    return pattern.matcher(text).results().map((MatchResult one) -> one.group(1)).toList();
  }

  @Test
  void every_part_of_a_document_is_in_the_guide_and_nothing_else() {
    String fault = ProtocolFile.read("no_part: 1").faults().getFirst();
    List<String> known = Arrays.asList(found(KNOWN, fault).getFirst().split(", ", -1));

    assertThat(MarkdownTable.of(GUIDE).rows())
        .flatExtracting(cells -> found(QUOTED, cells.getFirst()))
        .containsExactlyInAnyOrderElementsOf(known);
  }

  @Test
  void the_example_is_read_as_the_guide_says() {
    String document =
        SampleProtocols.documents().getFirst() + found(EXAMPLE, GUIDE.text()).getFirst();

    assertThat(ProtocolFile.read(document).orThrow().partialResponsesBeforeStep()).isEqualTo(2);
  }
}
