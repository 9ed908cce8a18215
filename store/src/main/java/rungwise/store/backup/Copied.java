package rungwise.store.backup;

import rungwise.store.journal.Inspected;

/** How a copy of a record went. */
public sealed interface Copied {

  /**
   * The copy is whole and was read again to its last entry.
   *
   * @param hasKey whether the key that seals the record lies in the copy
   */
  record Kept(Head head, boolean hasKey) implements Copied {}

  /** The record is broken, or is not the one that the head names: no copy was left behind. */
  record Refused(Inspected.Broken found) implements Copied {}
}
