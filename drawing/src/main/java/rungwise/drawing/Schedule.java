package rungwise.drawing;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.quantities.Volume;

/**
 * A signed titration schedule, as it is to be drawn.
 *
 * @param steps strictly rising, at least one; every step above a closed one is closed; at most one
 *     is in force and at most one is proposed
 * @param maximum the volume never to be passed; no step lies above it
 */
public record Schedule(List<Step> steps, Optional<Volume> maximum) {

  /** What is to be shown of a step. */
  public enum State {
    /** The dose that is signed and in force. */
    NOW,
    /** The advice, which nobody has signed. */
    PROPOSED,
    /** Injected before. */
    PAST,
    /** May not be given. */
    CLOSED
  }

  /**
   * One volume of the schedule.
   *
   * @param volume more than 0
   * @param mark the words for its line, such as "20-unit mark"
   * @param content the words for what it holds, such as "alprostadil 4 mcg"
   * @param states a closed step is not proposed
   */
  public record Step(Volume volume, String mark, String content, Set<State> states) {
    public Step {
      states = Set.copyOf(states);
      boolean closedAndProposed = states.containsAll(Set.of(State.CLOSED, State.PROPOSED));
      if (!volume.isMoreThan(Volume.ZERO) || closedAndProposed) {
        throw new IllegalArgumentException("bug: a step of " + volume + " that is " + states);
      }
      if (mark.isBlank() || content.isBlank()) {
        throw new IllegalArgumentException("bug: a step of " + volume + " without its words");
      }
    }

    boolean is(State state) {
      return states.contains(state);
    }

    /** "0.2 mL (20-unit mark), alprostadil 4 mcg". */
    String words() {
      return volume + " (" + mark + "), " + content;
    }
  }

  public Schedule {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("bug: a schedule without a step");
    }
    for (int i = 1; i < steps.size(); i++) {
      requireOrder(steps.get(i - 1), steps.get(i));
    }
    Volume largest = steps.getLast().volume();
    if (maximum.filter(largest::isMoreThan).isPresent()) {
      throw new IllegalArgumentException("bug: " + largest + " is above the maximum " + maximum);
    }
    requireOneAtMost(steps, State.NOW);
    requireOneAtMost(steps, State.PROPOSED);
  }

  private static void requireOrder(Step lower, Step upper) {
    boolean opensAgain = lower.is(State.CLOSED) && !upper.is(State.CLOSED);
    if (!upper.volume().isMoreThan(lower.volume()) || opensAgain) {
      throw new IllegalArgumentException(
          "bug: a schedule with " + upper.words() + " after " + lower.words());
    }
  }

  private static void requireOneAtMost(List<Step> steps, State state) {
    if (steps.stream().filter(step -> step.is(state)).count() > 1) {
      throw new IllegalArgumentException("bug: more than one step is " + state);
    }
  }

  /** The first step in a state. */
  Optional<Step> first(State state) {
    return steps.stream().filter(step -> step.is(state)).findFirst();
  }

  /** The volume at the end of the line: the maximum, or else the largest step. */
  Volume end() {
    return maximum.orElse(steps.getLast().volume());
  }
}
