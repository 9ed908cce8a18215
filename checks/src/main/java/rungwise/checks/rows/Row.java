package rungwise.checks.rows;

/**
 * One reference row: a question with the answer that an outside source gives.
 *
 * @param file the short name of its file, because ids repeat between files
 * @param line where it starts in the file, from 1
 * @param provenance how the source was seen
 */
public record Row(
    String file,
    long line,
    String id,
    String topic,
    String input,
    String expected,
    String tolerance,
    String source,
    String provenance) {

  /** "supply:A001". */
  public String name() {
    return file + ":" + id;
  }

  /** Whether its provenance allows a verdict: some rows are kept as a warning only. */
  public boolean isReliable() {
    return !provenance.contains("do not rely on") && !provenance.contains("do not test on");
  }
}
