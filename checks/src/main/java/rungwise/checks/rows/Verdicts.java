package rungwise.checks.rows;

import java.util.ArrayList;
import java.util.List;

/** The outcomes of all rows of a file, and the two ways of printing them. */
record Verdicts(List<Verdict> all) {

  /** The first code point that JSON takes as it is. */
  private static final int FIRST_PLAIN = 0x20;

  /**
   * The outcome of one row, or of a line that is no row.
   *
   * @param name "supply:A001", or the line
   */
  record Verdict(String name, String topic, Outcome outcome) {

    private String line() {
      return outcome.word() + " " + name + " " + topic + ": " + outcome.words();
    }

    private String json() {
      return "{\"id\":"
          + quoted(name)
          + ",\"topic\":"
          + quoted(topic)
          + ",\"outcome\":"
          + quoted(outcome.word())
          + ",\"detail\":"
          + quoted(outcome.words())
          + "}";
    }
  }

  static Verdicts of(RowFile file, Judge judge) {
    var all = new ArrayList<Verdict>();
    file.rows().forEach(row -> all.add(new Verdict(row.name(), row.topic(), judge.judge(row))));
    file.faults()
        .forEach(
            fault -> all.add(new Verdict(file.name(), "malformed row", new Outcome.Failed(fault))));
    return new Verdicts(List.copyOf(all));
  }

  private long count(Class<? extends Outcome> kind) {
    return all.stream().filter(verdict -> kind.isInstance(verdict.outcome())).count();
  }

  boolean hasFailures() {
    return count(Outcome.Failed.class) > 0;
  }

  /** One line for each row that failed or was skipped. */
  List<String> lines() {
    return all.stream()
        .filter(verdict -> !(verdict.outcome() instanceof Outcome.Passed))
        .map(Verdict::line)
        .toList();
  }

  /** "12 passed, 0 failed, 3 skipped". */
  String closingLine() {
    return count(Outcome.Passed.class)
        + " passed, "
        + count(Outcome.Failed.class)
        + " failed, "
        + count(Outcome.Skipped.class)
        + " skipped";
  }

  String json() {
    return "{\"passed\":"
        + count(Outcome.Passed.class)
        + ",\"failed\":"
        + count(Outcome.Failed.class)
        + ",\"skipped\":"
        + count(Outcome.Skipped.class)
        + ",\"rows\":["
        + String.join(",", all.stream().map(Verdict::json).toList())
        + "]}";
  }

  private static String quoted(String text) {
    var json = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            point -> {
              if (point == '"' || point == '\\') {
                json.append('\\').appendCodePoint(point);
              } else if (point < FIRST_PLAIN) {
                json.append(String.format("\\u%04x", point));
              } else {
                json.appendCodePoint(point);
              }
            });
    return json.append('"').toString();
  }
}
