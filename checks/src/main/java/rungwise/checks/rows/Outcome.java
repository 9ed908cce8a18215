package rungwise.checks.rows;

/** What became of a row. */
public sealed interface Outcome {

  /** The answer is near enough. */
  record Passed(String answer) implements Outcome {}

  /** The answer is not near enough, or there is none because of a fault. */
  record Failed(String reason) implements Outcome {}

  /** There was no verdict. */
  record Skipped(String reason) implements Outcome {}

  /** "passed", "failed" or "skipped". */
  default String word() {
    return switch (this) {
      case Passed passed -> "passed";
      case Failed failed -> "failed";
      case Skipped skipped -> "skipped";
    };
  }

  /** The answer or the reason. */
  default String words() {
    return switch (this) {
      case Passed passed -> passed.answer();
      case Failed failed -> failed.reason();
      case Skipped skipped -> skipped.reason();
    };
  }
}
