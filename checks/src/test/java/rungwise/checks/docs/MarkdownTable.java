package rungwise.checks.docs;

import java.util.Arrays;
import java.util.List;
import rungwise.checks.house.TextFile;

/**
 * The only table of a document.
 *
 * @param rows the cells below the header
 */
record MarkdownTable(List<String> header, List<List<String>> rows) {

  /** The header and the line of dashes below it. */
  private static final int LINES_ABOVE_THE_ROWS = 2;

  static MarkdownTable of(TextFile file) {
    List<List<String>> lines =
        file.lines().stream()
            .filter(line -> line.startsWith("|"))
            .map(MarkdownTable::cells)
            .toList();
    return new MarkdownTable(lines.getFirst(), lines.subList(LINES_ABOVE_THE_ROWS, lines.size()));
  }

  private static List<String> cells(String line) {
    String inner = line.strip().replaceFirst("^\\|", "").replaceFirst("\\|$", "");
    return Arrays.stream(inner.split("\\|", -1)).map(String::strip).toList();
  }
}
