package rungwise.clinic.sheet;

import java.util.List;

/**
 * What waits for a prescriber before it stops or closes nothing any more.
 *
 * @param flags reports that a prescriber is to look at, each with all that is flagged of it
 * @param corrections reports that were corrected or withdrawn and go on counting
 * @param emergencies those to review, each in a line
 * @param isEndOpen whether one of them does not say how it ended
 * @param past long erections from before the record, of which it is not known what was injected
 */
public record LiftingView(
    List<Flagged> flags,
    List<Correction> corrections,
    List<String> emergencies,
    boolean isEndOpen,
    List<String> past) {

  public LiftingView {
    flags = List.copyOf(flags);
    corrections = List.copyOf(corrections);
    emergencies = List.copyOf(emergencies);
    past = List.copyOf(past);
  }

  /** Whether nothing waits. */
  public boolean isEmpty() {
    return flags.isEmpty() && corrections.isEmpty() && emergencies.isEmpty() && past.isEmpty();
  }

  /**
   * A report that was kept as it was told.
   *
   * @param entry its number
   */
  public record Flagged(String entry, String injection, List<Flag> flags) {
    public Flagged {
      flags = List.copyOf(flags);
    }
  }

  /** What is flagged of it, with what that rests on. */
  public record Flag(String sentence, List<String> facts) {
    public Flag {
      facts = List.copyOf(facts);
    }
  }

  /**
   * A report that was corrected or withdrawn.
   *
   * @param entry the entry that stands there instead
   * @param said what the report said
   * @param saidBy who wrote it, and when
   * @param now what stands there instead
   * @param nowBy who wrote that, and when
   * @param reason why, in the writer's words
   * @param keeps what the report goes on doing
   */
  public record Correction(
      String entry,
      String said,
      String saidBy,
      String now,
      String nowBy,
      String reason,
      String keeps) {}
}
