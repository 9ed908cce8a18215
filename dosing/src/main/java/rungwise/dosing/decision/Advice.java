package rungwise.dosing.decision;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.dosing.guard.Verdict;
import rungwise.quantities.Volume;

/**
 * What the engine answers to a question: unsigned, with everything that led to it.
 *
 * @param courseVerdicts what forbids every dose
 * @param steps every step of the ladder with what speaks against it
 * @param timeVerdicts what forbids injecting right now
 * @param homeVerdicts what forbids home use
 * @param choice the way in which the dose was chosen, and the population if one was asked
 * @param protocol the key of the protocol version
 * @param engine the version of the engine
 */
public record Advice(
    Proposal proposal,
    List<Verdict> courseVerdicts,
    List<StepVerdicts> steps,
    List<Verdict> timeVerdicts,
    List<Verdict> homeVerdicts,
    Optional<Instant> notBefore,
    String choice,
    String protocol,
    String engine) {

  /** One step and all that was said of it. */
  public record StepVerdicts(Volume volume, List<Verdict> verdicts) {
    public StepVerdicts {
      verdicts = List.copyOf(verdicts);
    }

    /** Whether a prescriber may sign it. */
    public boolean isAllowed() {
      return !isStopped(verdicts);
    }
  }

  private static boolean isStopped(List<Verdict> verdicts) {
    for (Verdict verdict : verdicts) {
      if (verdict.isHardStop()) {
        return true;
      }
    }
    return false;
  }

  public Advice {
    courseVerdicts = List.copyOf(courseVerdicts);
    steps = List.copyOf(steps);
    timeVerdicts = List.copyOf(timeVerdicts);
    homeVerdicts = List.copyOf(homeVerdicts);
  }

  public Decision decision() {
    return proposal.decision();
  }

  /** The deciding reason. */
  public Reason reason() {
    return proposal.reasons().getFirst();
  }

  /** What was said of the proposed volume. */
  public List<Verdict> verdictsOnProposal() {
    return decision().proposed().map(this::verdictsOn).orElse(List.of());
  }

  /** What was said of one step. */
  public List<Verdict> verdictsOn(Volume volume) {
    return step(volume).map(StepVerdicts::verdicts).orElse(List.of());
  }

  private Optional<StepVerdicts> step(Volume volume) {
    for (StepVerdicts step : steps) {
      if (step.volume().equals(volume)) {
        return Optional.of(step);
      }
    }
    return Optional.empty();
  }

  /** Whether a prescriber may sign a volume. */
  public boolean isAllowed(Volume volume) {
    return !isStopped(courseVerdicts) && step(volume).filter(StepVerdicts::isAllowed).isPresent();
  }

  /** The whole advice in a fixed text, for the record. */
  public String record() {
    return String.join(
        "\n",
        "decision: " + decision().key(),
        "reasons: " + proposal.reasons(),
        "course: " + courseVerdicts,
        "steps: "
            + steps.stream()
                .map(step -> step.volume() + " " + step.verdicts())
                .collect(Collectors.joining("; ")),
        "now: " + timeVerdicts,
        "home: " + homeVerdicts,
        "not before: " + notBefore.map(Instant::toString).orElse("-"),
        "choice: " + choice,
        "protocol: " + protocol,
        "engine: " + engine);
  }
}
