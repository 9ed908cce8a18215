package rungwise.checks.rows;

import rungwise.checks.topics.Answer;
import rungwise.checks.topics.Input;
import rungwise.checks.topics.InputFault;
import rungwise.checks.topics.Topics;

/** Asks the product and holds its answer against the row. */
public final class Judge {

  private final NotYet notYet;

  public Judge(NotYet notYet) {
    this.notYet = notYet;
  }

  /** The outcome of a row; a fault in the row is a failure with its reason. */
  public Outcome judge(Row row) {
    if (!row.isReliable()) {
      return new Outcome.Skipped("not to be relied on: " + row.provenance());
    }
    try {
      return switch (answer(row)) {
        case Answer.NotBuilt none ->
            new Outcome.Skipped("not built: " + notYet.reasonFor(row).orElse(none.why()));
        case Answer.Words answer -> compare(row, answer);
        case Answer.OneNumber answer -> compare(row, answer);
        case Answer.Numbers answer -> compare(row, answer);
        case Answer.Named answer -> compare(row, answer);
      };
    } catch (InputFault fault) {
      return new Outcome.Failed(fault.reason());
    }
  }

  /** Whether the product answers such a row, rightly or wrongly. */
  public static boolean isBuilt(Row row) {
    try {
      return !(answer(row) instanceof Answer.NotBuilt);
    } catch (InputFault fault) {
      return true;
    }
  }

  private static Answer answer(Row row) {
    return Topics.answer(row.topic(), Input.parse(row.input()));
  }

  private static Outcome compare(Row row, Answer answer) {
    if (Tolerance.parse(row.tolerance()).accepts(answer, row.expected())) {
      return new Outcome.Passed(answer.toString());
    }
    return new Outcome.Failed(
        "expected " + row.expected() + " (tolerance " + row.tolerance() + "), answered " + answer);
  }
}
