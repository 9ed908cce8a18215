package rungwise.clinic.reach;

import java.time.Instant;

/**
 * One thing that was written of how a man is reached. It decides nothing about a dose, and no word
 * of it ends or calms an emergency.
 */
public sealed interface ReachWord {

  /** Whether it goes on counting where nothing is proven: that he was reached does not. */
  default boolean holds() {
    return !(this instanceof Reached);
  }

  /** A number of his; one that corrects an earlier entry stands in its place. */
  record NumberKept(Telephone telephone) implements ReachWord {}

  /** The number of the entry that this one corrects is no longer his. */
  record NumberGone() implements ReachWord {}

  /** What he asked for; it replaces what he had asked for before. */
  record WishesKept(Wishes wishes) implements ReachWord {}

  /**
   * He was called and not reached.
   *
   * @param number as it was dialled
   * @param next when the next try is due
   */
  record NotReached(String number, Instant next) implements ReachWord {}

  /** He was reached; the tries before it are over. */
  record Reached(String number) implements ReachWord {}
}
