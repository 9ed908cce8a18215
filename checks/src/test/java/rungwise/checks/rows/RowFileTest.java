package rungwise.checks.rows;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.quantities.Reading;

final class RowFileTest {

  private static final String HEADER = "id,topic,input,expected,tolerance,source,provenance\n";

  private static RowFile parse(String rows) {
    return RowFile.parse("supply", HEADER + rows).orThrow();
  }

  private static Reading<RowFile> parseWhole(String text) {
    return RowFile.parse("supply", text);
  }

  @Test
  void a_row_has_seven_columns_and_the_name_of_its_file() {
    var file = parse("A001,A.convert,op=x;units=1,0.01,1e-9,\"a, b\",read\n");

    assertThat(file.faults()).isEmpty();
    assertThat(file.rows())
        .containsExactly(
            new Row(
                "supply", 2, "A001", "A.convert", "op=x;units=1", "0.01", "1e-9", "a, b", "read"));
    assertThat(file.rows().getFirst().name()).isEqualTo("supply:A001");
  }

  @Test
  void bare_commas_in_the_source_belong_to_the_source() {
    var row = parse("D039,t,op=x,8.47,0.015,worked values, 2011, of a formula,read\n").rows();

    assertThat(row.getFirst().source()).isEqualTo("worked values, 2011, of a formula");
    assertThat(row.getFirst().provenance()).isEqualTo("read");
  }

  @Test
  void every_faulty_line_is_reported_with_its_number_and_the_others_are_kept() {
    var file = parse("A001,t,i,1\nA002,t,i,1,exact,s,p\nA002,t,i,1,exact,s,p\n,t,i,1,exact,s,p\n");

    assertThat(file.rows()).extracting(Row::id).containsExactly("A002");
    assertThat(file.faults())
        .containsExactly(
            "line 2: it has 4 columns; a row has 7",
            "line 4: the id A002 was given before",
            "line 5: its id or its topic is missing");
  }

  @Test
  void a_line_break_in_quotes_does_not_shift_the_line_numbers() {
    var file = parse("A001,t,i,1,exact,\"two\nlines\",p\nA002,t\n");

    assertThat(file.faults()).containsExactly("line 4: it has 2 columns; a row has 7");
  }

  @Test
  void a_byte_order_mark_and_line_ends_of_both_kinds_are_read() {
    var file = parseWhole("\uFEFF" + HEADER.strip() + "\r\nA001,t,i,1,exact,s,p\r\n\r\n").orThrow();

    assertThat(file.rows()).hasSize(1);
  }

  @Test
  void another_first_line_is_refused_with_the_right_one() {
    assertThat(parseWhole("id,topic\nA001,t\n").faults().getFirst())
        .contains("id,topic\"")
        .contains("id,topic,input,expected,tolerance,source,provenance");
    assertThat(parseWhole("").faults()).hasSize(1);
  }

  @Test
  void a_file_without_rows_is_refused() {
    assertThat(parseWhole(HEADER).faults()).hasSize(1);
  }

  @Test
  void a_quote_that_is_never_closed_is_refused() {
    assertThat(parseWhole(HEADER + "A001,t,\"i,1,exact,s,p\n").faults().getFirst())
        .startsWith("The file is not CSV");
  }

  @Test
  void a_missing_file_and_a_file_that_is_not_text_are_refused(@TempDir Path folder)
      throws IOException {
    Path binary = folder.resolve("supply-checks.csv");
    Files.write(binary, new byte[] {(byte) 0xC3, (byte) 0x28});

    assertThat(RowFile.read(folder.resolve("none.csv")).faults().getFirst()).contains("none.csv");
    assertThat(RowFile.read(binary).faults().getFirst()).contains("UTF-8");
    assertThat(RowFile.read(folder).faults()).hasSize(1);
  }

  @Test
  void the_short_name_is_the_file_name_up_to_its_first_dash_or_point(@TempDir Path folder)
      throws IOException {
    Path file = folder.resolve("clinical-checks-more.csv");
    Files.writeString(file, HEADER + "A001,t,i,1,exact,s,p\n", StandardCharsets.UTF_8);

    var row = RowFile.read(file).orThrow().rows().getFirst();

    assertThat(row.name()).isEqualTo("clinical:A001");
  }

  @Test
  void a_row_that_says_not_to_rely_on_it_is_not_reliable() {
    var rows =
        parse(
                """
                A1,t,i,1,exact,s,read but damaged text: do not rely on it
                A2,t,i,1,exact,s,from memory: do not test on it
                A3,t,i,1,exact,s,read
                """)
            .rows();

    assertThat(rows).extracting(Row::isReliable).containsExactly(false, false, true);
  }
}
