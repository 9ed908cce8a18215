package rungwise.checks.rows;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every reference row that the product can answer, and the exact list of those it cannot. */
final class ReferenceRowsTest {

  /** Three rows carry a damaged text of a standard; they warn and give no verdict. */
  private static final List<String> NOT_TO_BE_RELIED_ON =
      List.of("supply:A132", "supply:A133", "supply:A134");

  private final NotYet notYet = NotYet.committed();
  private final Judge judge = new Judge(notYet);

  private static Stream<Row> rows() {
    return ReferenceFiles.all().stream().flatMap(file -> file.rows().stream());
  }

  private static Stream<Row> reliableRows() {
    return rows().filter(Row::isReliable);
  }

  @TestFactory
  Stream<DynamicTest> the_product_answers_as_the_source_does() {
    return reliableRows()
        .filter(row -> notYet.reasonFor(row).isEmpty())
        .map(
            row ->
                dynamicTest(
                    row.name() + " " + row.topic() + " - " + row.source(),
                    () -> assertThat(judge.judge(row)).isInstanceOf(Outcome.Passed.class)));
  }

  @Test
  void both_files_are_read_without_a_fault() {
    assertThat(ReferenceFiles.all()).hasSize(2);
    assertThat(ReferenceFiles.all()).allSatisfy(file -> assertThat(file.faults()).isEmpty());
  }

  @Test
  void only_rows_with_damaged_text_are_left_out() {
    assertThat(rows().filter(row -> !row.isReliable()).map(Row::name))
        .containsExactlyElementsOf(NOT_TO_BE_RELIED_ON);
  }

  @Test
  void every_row_that_is_not_built_is_listed_once_with_a_reason() {
    assertThat(reliableRows().filter(row -> !Judge.isBuilt(row)))
        .allSatisfy(
            row ->
                assertThat(notYet.entries().stream().filter(entry -> entry.covers(row)))
                    .as("entries of not-yet.csv for %s %s (%s)", row.name(), row.topic(), row)
                    .hasSize(1)
                    .allSatisfy(entry -> assertThat(entry.reason()).isNotBlank()));
  }

  @Test
  void no_row_that_is_built_is_listed() {
    assertThat(reliableRows().filter(Judge::isBuilt))
        .allSatisfy(row -> assertThat(notYet.reasonFor(row)).as(row.name()).isEmpty());
  }

  @Test
  void every_entry_of_the_list_speaks_of_a_row() {
    assertThat(notYet.entries())
        .allSatisfy(entry -> assertThat(rows().filter(entry::covers)).as("%s", entry).isNotEmpty());
  }
}
