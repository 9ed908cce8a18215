package rungwise.checks.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.checks.house.JavaSource;
import rungwise.checks.house.JavaSources;
import rungwise.checks.house.Repository;

/** Each hazard has a control and a test, and both are there. */
final class HazardsTest {

  private static final MarkdownTable TABLE = MarkdownTable.of(Repository.file("docs/hazards.md"));

  private static final int CONTROL = 3;
  private static final int TEST = 4;
  private static final Pattern QUOTED = Pattern.compile("`([^`]+)`");

  private static final Set<String> TEST_ANNOTATIONS =
      Set.of("Test", "ParameterizedTest", "TestFactory", "RepeatedTest");

  /** A row with what its control and its test cells quote. */
  private record Hazard(String id, List<String> cells) {
    List<String> quoted(int cell) {
      return QUOTED.matcher(cells.get(cell)).results().map(found -> found.group(1)).toList();
    }
  }

  private static Stream<Hazard> hazards() {
    return TABLE.rows().stream().map(cells -> new Hazard(cells.getFirst(), cells));
  }

  @Test
  void the_table_has_five_columns_and_no_empty_cell() {
    assertThat(TABLE.header())
        .containsExactly("id", "hazard", "how it would hurt", "control", "test");
    assertThat(TABLE.rows())
        .isNotEmpty()
        .allSatisfy(
            cells -> assertThat(cells).hasSameSizeAs(TABLE.header()).noneMatch(String::isBlank));
  }

  @Test
  void every_id_is_given_once_and_in_order() {
    List<String> ids = hazards().map(Hazard::id).toList();

    assertThat(ids).allMatch(id -> id.matches("H-[0-9]{3}")).doesNotHaveDuplicates().isSorted();
  }

  @Test
  void every_control_that_is_named_is_in_the_product() {
    assertThat(hazards())
        .allSatisfy(
            hazard ->
                assertThat(hazard.quoted(CONTROL))
                    .as("controls of %s", hazard.id())
                    .isNotEmpty()
                    .allMatch(HazardsTest::isInTheProduct));
  }

  /** "Type" or "Type.member", where a member is a method or a constant of that file. */
  private static boolean isInTheProduct(String control) {
    String type = control.replaceFirst("\\..*$", "");
    String member = control.contains(".") ? control.replaceFirst("^[^.]*\\.", "") : "";
    return JavaSources.all().stream()
        .filter(JavaSource::isMain)
        .filter(source -> source.types().stream().anyMatch(one -> one.name().equals(type)))
        .anyMatch(source -> member.isEmpty() || hasMember(source, member));
  }

  private static boolean hasMember(JavaSource source, String member) {
    boolean isMethod = source.methods().stream().anyMatch(one -> one.name().equals(member));
    Pattern constant = Pattern.compile("(?m)^\\s+.*\\b" + Pattern.quote(member) + "(?:\\(| =|,|;)");
    return isMethod || constant.matcher(source.file().text()).find();
  }

  @Test
  void every_test_that_is_named_is_there() {
    Set<String> tests =
        JavaSources.all().stream()
            .filter(source -> !source.isMain())
            .flatMap(source -> source.methods().stream())
            .filter(method -> method.annotations().stream().anyMatch(TEST_ANNOTATIONS::contains))
            .map(method -> method.type() + "#" + method.name())
            .collect(Collectors.toSet());

    assertThat(hazards())
        .allSatisfy(
            hazard ->
                assertThat(hazard.quoted(TEST))
                    .as("tests of %s", hazard.id())
                    .isNotEmpty()
                    .allMatch(tests::contains));
  }

  @Test
  void what_is_not_there_is_found_missing() {
    assertThat(Stream.of("Volume", "GuardRule.ABOVE_CEILING", "Barrel.markAtOrBelow"))
        .allMatch(HazardsTest::isInTheProduct);
    assertThat(Stream.of("Volumes", "GuardRule.ABOVE_ALL", "Barrel.markAbove"))
        .noneMatch(HazardsTest::isInTheProduct);
    assertThat(QUOTED.matcher("`A`, and `B`").results().map(MatchResult::group)).hasSize(2);
  }
}
