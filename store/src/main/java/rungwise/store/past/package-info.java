/**
 * Histories from before the record, in the journal.
 *
 * <p>In: histories. Out: those that count. Must not know: what a guard makes of them.
 */
@NullMarked
package rungwise.store.past;

import org.jspecify.annotations.NullMarked;
