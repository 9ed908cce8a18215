package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.JavaSource;
import rungwise.checks.house.JavaSources;
import rungwise.checks.house.Repository;

/** The table of OWASP ASVS 5.0.0: whole, in order, and naming only what is there. */
final class SecurityTest {

  private static final String FILE = "docs/security.md";
  private static final Pattern ROW =
      Pattern.compile(
          "(?m)^\\| (\\d+)\\.(\\d+)\\.(\\d+) \\| ([12]) \\| ([^|]+) \\| ([^|]+) \\| ([^|]+) \\|$");
  private static final Pattern TYPE = Pattern.compile("`([A-Z][A-Za-z]+)(?:\\.[a-zA-Z]+)?`");
  private static final Pattern TEST = Pattern.compile("`([A-Z][A-Za-z0-9]+Test)`");
  private static final Pattern WORDS =
      Pattern.compile("GLOSSARY|docs/[a-z./]+|\\b\\d{4}\\b|[A-Z][a-zA-Z ]+(?=, on this page)");
  private static final int MOST_READ = 1;
  private static final List<String> STATES =
      List.of("met", "described", "read", "partly", "missing", "not applicable");

  /** Items of level 1 and of level 2 in the published list of 5.0.0. */
  private static final Map<String, Long> PUBLISHED = Map.of("1", 70L, "2", 183L);

  private record Item(
      int chapter, int section, int number, String level, String state, String why) {
    int order() {
      return (chapter * 100 + section) * 100 + number;
    }
  }

  private static List<Item> items() {
    return ROW.matcher(Repository.file(FILE).text())
        .results()
        .map(
            row ->
                new Item(
                    Integer.parseInt(row.group(1)),
                    Integer.parseInt(row.group(2)),
                    Integer.parseInt(row.group(3)),
                    row.group(4),
                    row.group(6),
                    row.group(7)))
        .toList();
  }

  @Test
  void every_item_of_levels_one_and_two_has_one_row_in_order() {
    List<Integer> order = items().stream().map(Item::order).toList();

    assertThat(items().stream().collect(Collectors.groupingBy(Item::level, Collectors.counting())))
        .isEqualTo(PUBLISHED);
    assertThat(order).doesNotHaveDuplicates().isSorted();
    assertThat(items().stream().map(Item::chapter).distinct())
        .containsExactlyElementsOf(IntStream.rangeClosed(1, 17).boxed().toList());
  }

  @Test
  void the_states_are_counted_as_the_text_says() {
    Map<String, Long> counted =
        items().stream().collect(Collectors.groupingBy(Item::state, Collectors.counting()));

    assertThat(counted.keySet()).isSubsetOf(STATES);
    for (String state : STATES) {
      assertThat(Repository.file(FILE).text()).contains("`" + state + "` " + counted.get(state));
    }
    assertThat(Repository.file(FILE).text()).contains("in all " + items().size() + ".");
    assertThat(counted.get("read")).as("may only become fewer").isLessThanOrEqualTo(MOST_READ);
  }

  @Test
  void what_is_said_to_be_described_names_words_that_are_there() {
    String page = Repository.file(FILE).text();

    assertThat(items())
        .filteredOn(item -> item.state().equals("described"))
        .isNotEmpty()
        .allSatisfy(
            item -> {
              assertThat(item.why()).containsPattern(WORDS);
              assertThat(WORDS.matcher(item.why()).results().map(MatchResult::group))
                  .allMatch(words -> isThere(words, page));
            });
  }

  private static boolean isThere(String words, String page) {
    return switch (words) {
      case "GLOSSARY" -> Repository.has("GLOSSARY.md");
      case String file when file.startsWith("docs/") -> Repository.has(file);
      case String number when number.matches("\\d{4}") ->
          Repository.textFilesBelow("docs/decisions").stream()
              .anyMatch(file -> file.path().contains("/" + number + "-"));
      default -> page.contains("\n## " + words);
    };
  }

  @Test
  void what_is_said_to_be_met_names_a_test_that_shows_it() {
    List<String> tests =
        JavaSources.all().stream()
            .flatMap(source -> source.types().stream())
            .map(JavaSource.Type::name)
            .filter(name -> name.endsWith("Test"))
            .toList();

    assertThat(items())
        .filteredOn(item -> item.state().equals("met"))
        .isNotEmpty()
        .allSatisfy(
            item ->
                assertThat(TEST.matcher(item.why()).results().map(found -> found.group(1)))
                    .isNotEmpty()
                    .isSubsetOf(tests));
  }

  @Test
  void every_type_that_is_named_is_there() {
    List<String> types =
        JavaSources.all().stream()
            .flatMap(source -> source.types().stream())
            .map(JavaSource.Type::name)
            .toList();

    assertThat(TYPE.matcher(Repository.file(FILE).text()).results().map(found -> found.group(1)))
        .isNotEmpty()
        .filteredOn(name -> !name.equals("URLEncoder") && !name.equals("SecureRandom"))
        .isSubsetOf(types);
  }
}
