package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.Repository;

/** The document of the record file names every kind of fact that the store keeps, and no other. */
final class RecordFileTest {

  private static final String MIGRATIONS = "store/src/main/resources/db/migration/common";
  private static final Pattern TABLE =
      Pattern.compile("(?is)create table (\\w+)\\s*\\((.*?)\\n\\)");
  private static final Pattern FACT = Pattern.compile("(?m)^\\s+entry_id ");
  private static final Pattern ROW = Pattern.compile("(?m)^\\| (`[a-z_]+`(?:, `[a-z_]+`)*) \\|");
  private static final Pattern NAME = Pattern.compile("[a-z_]+");

  /** The keys of an entry, whose table has the same form. */
  private static final Set<String> KEYS =
      Set.of(
          "form",
          "version",
          "scope",
          "entries",
          "number",
          "id",
          "kind",
          "course",
          "at",
          "by",
          "on_behalf_of",
          "corrects",
          "reason",
          "clock",
          "facts");

  private static Set<String> kept() {
    return Repository.textFilesBelow(MIGRATIONS).stream()
        .flatMap(file -> TABLE.matcher(file.text()).results())
        .filter(table -> FACT.matcher(table.group(2)).find())
        .map(table -> table.group(1))
        .collect(Collectors.toSet());
  }

  private static Set<String> described() {
    return ROW.matcher(Repository.file("docs/record-file.md").text())
        .results()
        .flatMap(row -> NAME.matcher(row.group(1)).results())
        .map(MatchResult::group)
        .filter(name -> !KEYS.contains(name))
        .collect(Collectors.toSet());
  }

  @Test
  void every_kind_of_fact_is_described_and_no_other() {
    assertThat(kept()).hasSizeGreaterThan(40);
    assertThat(described()).containsExactlyInAnyOrderElementsOf(kept());
  }
}
