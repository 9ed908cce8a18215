/**
 * The days of the room in the journal.
 *
 * <p>In: a day that was closed. Out: the last one. Must not know: who was observed.
 */
@NullMarked
package rungwise.store.room;

import org.jspecify.annotations.NullMarked;
