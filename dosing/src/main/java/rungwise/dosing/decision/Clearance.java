package rungwise.dosing.decision;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.guard.Clears;
import rungwise.dosing.guard.Verdict;

/**
 * The answer to "may he inject now?".
 *
 * @param verdicts everything that was said, notes included
 */
public record Clearance(List<Verdict> verdicts) {

  public Clearance {
    verdicts = List.copyOf(verdicts);
  }

  /** What stops him. */
  public List<Verdict> blocks() {
    return verdicts.stream().filter(Verdict::isBlock).toList();
  }

  /** Whether nothing on record stops him. */
  public boolean isClear() {
    return blocks().isEmpty();
  }

  /** The instant at which all blocks will have cleared by themselves; none if one needs an act. */
  public Optional<Instant> clearsAt() {
    boolean allByTime = blocks().stream().allMatch(one -> one.clears() instanceof Clears.At);
    return allByTime ? latest(blocks()) : Optional.empty();
  }

  /** The latest instant at which one of these clears. */
  public static Optional<Instant> latest(List<Verdict> verdicts) {
    return verdicts.stream()
        .map(Verdict::clears)
        .filter(Clears.At.class::isInstance)
        .map(clears -> ((Clears.At) clears).instant())
        .max(Comparator.naturalOrder());
  }
}
