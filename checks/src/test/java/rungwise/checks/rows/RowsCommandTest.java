package rungwise.checks.rows;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class RowsCommandTest {

  private static final String HEADER = "id,topic,input,expected,tolerance,source,provenance\n";
  private static final String RIGHT =
      "Z1,A.convert,op=units_to_mL;scale=U-100;units=33,0.33,1e-9,s,read\n";
  private static final String WRONG =
      "Z2,A.convert,op=units_to_mL;scale=U-100;units=33,0.34,1e-9,s,read\n";
  private static final String UNKNOWN = "Z3,Z.nothing,op=x,1,exact,s,read\n";

  @TempDir private Path folder;

  /** What a run printed. */
  private record Printed(int status, List<String> out, String err) {}

  private static Printed run(String... arguments) {
    var out = new ByteArrayOutputStream();
    var err = new ByteArrayOutputStream();
    int status =
        new RowsCommand(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8))
            .run(List.of(arguments));
    return new Printed(
        status,
        out.toString(StandardCharsets.UTF_8).lines().toList(),
        err.toString(StandardCharsets.UTF_8));
  }

  private String file(String rows) throws IOException {
    Path file = folder.resolve("supply-new.csv");
    Files.writeString(file, HEADER + rows, StandardCharsets.UTF_8);
    return file.toString();
  }

  @Test
  void a_right_row_passes_and_leaves_only_the_closing_line() throws IOException {
    var printed = run(file(RIGHT));

    assertThat(printed.status()).isZero();
    assertThat(printed.out()).containsExactly("1 passed, 0 failed, 0 skipped");
  }

  @Test
  void a_wrong_row_fails_with_both_values() throws IOException {
    var printed = run(file(RIGHT + WRONG));

    assertThat(printed.status()).isEqualTo(1);
    assertThat(printed.out())
        .containsExactly(
            "failed supply:Z2 A.convert: expected 0.34 (tolerance 1e-9), answered 0.33",
            "1 passed, 1 failed, 0 skipped");
  }

  @Test
  void a_topic_that_is_not_built_is_skipped_with_the_reason() throws IOException {
    var printed = run(file(RIGHT + UNKNOWN));

    assertThat(printed.status()).isZero();
    assertThat(printed.out().getFirst()).startsWith("skipped supply:Z3 Z.nothing: not built");
    assertThat(printed.out().getLast()).isEqualTo("1 passed, 0 failed, 1 skipped");
  }

  @Test
  void malformed_rows_fail_with_their_reason_and_never_crash() throws IOException {
    var printed =
        run(
            file(
                """
                Z1,A.convert
                Z2,A.convert,op=units_to_mL;scale=U-100;units=abc,1,1e-9,s,read
                Z3,A.convert,op=units_to_mL;scale=U-99;units=1,1,1e-9,s,read
                Z4,A.convert,op=units_to_mL;scale=U-100,1,1e-9,s,read
                Z5,A.convert,op=units_to_mL;scale=U-100;units=1;x=2,0.01,1e-9,s,read
                Z6,A.convert,op=units_to_mL;scale=U-100;units=1,0.01,roughly,s,read
                Z7,A.convert,op=units_to_mL;scale=U-100;units=1,soon,1e-9,s,read
                Z8,A.convert,op=units_to_mL;=1,1,1e-9,s,read
                Z9,A.mismatch,op=volume_ratio_same_mark;actual_scale=,1,1e-9,s,read
                """));

    assertThat(printed.status()).isEqualTo(1);
    assertThat(printed.out()).hasSize(10).last().isEqualTo("0 passed, 9 failed, 0 skipped");
    assertThat(printed.out().subList(0, 9)).allSatisfy(line -> assertThat(line).contains(": "));
    assertThat(printed.out()).anySatisfy(line -> assertThat(line).contains("\"abc\""));
    assertThat(printed.out()).anySatisfy(line -> assertThat(line).contains("U-99"));
    assertThat(printed.out()).anySatisfy(line -> assertThat(line).contains("[x]"));
  }

  @Test
  void json_is_one_object_and_the_closing_line_goes_to_standard_error() throws IOException {
    var printed = run(file(RIGHT + WRONG), "--json");

    assertThat(printed.status()).isEqualTo(1);
    assertThat(printed.out())
        .containsExactly(
            "{\"passed\":1,\"failed\":1,\"skipped\":0,\"rows\":["
                + "{\"id\":\"supply:Z1\",\"topic\":\"A.convert\",\"outcome\":\"passed\","
                + "\"detail\":\"0.33\"},"
                + "{\"id\":\"supply:Z2\",\"topic\":\"A.convert\",\"outcome\":\"failed\","
                + "\"detail\":\"expected 0.34 (tolerance 1e-9), answered 0.33\"}]}");
    assertThat(printed.err()).isEqualTo("1 passed, 1 failed, 0 skipped" + System.lineSeparator());
  }

  @Test
  void a_file_that_is_none_of_rows_and_a_wrong_call_end_with_status_2() throws IOException {
    Path other = folder.resolve("supply-other.csv");
    Files.writeString(other, "a,b\n1,2\n", StandardCharsets.UTF_8);

    assertThat(run(other.toString()).status()).isEqualTo(2);
    assertThat(run(other.toString()).err()).contains("id,topic,input");
    assertThat(run(folder.resolve("none.csv").toString()).status()).isEqualTo(2);
    assertThat(run().err()).contains("usage");
    assertThat(run("a.csv", "b.csv").status()).isEqualTo(2);
    assertThat(run("--all").status()).isEqualTo(2);
    assertThat(run("--json").out()).isEmpty();
  }
}
