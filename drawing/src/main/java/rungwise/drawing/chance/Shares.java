package rungwise.drawing.chance;

import java.util.List;

/**
 * Shares that were reported beside those that were expected, as they are to be drawn.
 *
 * @param heading what the shares are of
 * @param columns from left to right, at least one
 * @param words what the drawing shows, in sentences
 * @param caveat what the expected shares rest on
 */
public record Shares(String heading, List<Column> columns, List<String> words, String caveat) {

  /**
   * One group of reports.
   *
   * @param label below it: a volume or a limit
   * @param low the share that was surely reported, from 0 to 1
   * @param high the share that was possibly reported, not below low; equal where it is known
   * @param expected between what the share was expected, and its mean
   * @param words the same in a sentence
   */
  public record Column(String label, double low, double high, Band expected, String words) {

    public Column {
      if (!(low >= 0 && high >= low && high <= 1)) {
        throw new IllegalArgumentException("bug: a share between " + low + " and " + high);
      }
    }

    /** Whether no share that may have been reported lies within the expected ones. */
    public boolean isOutside() {
      return low > expected.high() || high < expected.low();
    }
  }

  public Shares {
    columns = List.copyOf(columns);
    words = List.copyOf(words);
    if (columns.isEmpty()) {
      throw new IllegalArgumentException("bug: no shares");
    }
  }
}
