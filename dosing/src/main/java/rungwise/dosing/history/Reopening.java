package rungwise.dosing.history;

import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Volume;

/**
 * A prescriber's written decision to allow volumes that a long erection had closed. It speaks only
 * of what the record held when it was written.
 *
 * @param entry the number of the record's entry that says so
 * @param upTo the largest volume that is open again
 */
public record Reopening(long entry, PreparationId preparation, Volume upTo) {}
