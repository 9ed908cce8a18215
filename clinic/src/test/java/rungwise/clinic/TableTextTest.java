package rungwise.clinic;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

final class TableTextTest {

  /** The signs that OWASP names under "CSV Injection", with those of full width (from memory). */
  private static final List<String> SIGNS =
      List.of("=", "+", "-", "@", "\t", "\r", "\uFF1D", "\uFF0B", "\uFF0D", "\uFF20");

  static Stream<String> acting() {
    return SIGNS.stream()
        .flatMap(
            sign ->
                Stream.of(
                    sign,
                    sign + "1+1",
                    sign + "SUM(1)\n2",
                    "'" + sign + "1",
                    "''" + sign + "cmd|' /C calc'!A0"));
  }

  static Stream<String> harmless() {
    return Stream.of("", "HL-1017", "'", "''", "'quoted'", "O'Neil", "1+1", " =1", "'HL-1");
  }

  @ParameterizedTest
  @MethodSource("acting")
  void what_a_spreadsheet_would_run_begins_with_an_apostrophe_and_comes_back_as_it_was(
      String text) {
    String safe = TableText.safe(text);

    assertThat(safe).isEqualTo("'" + text);
    assertThat(TableText.read(safe)).isEqualTo(text);
  }

  @ParameterizedTest
  @MethodSource("harmless")
  void whatever_else_is_written_stays_as_it_is(String text) {
    assertThat(TableText.safe(text)).isEqualTo(text);
    assertThat(TableText.read(text)).isEqualTo(text);
  }
}
