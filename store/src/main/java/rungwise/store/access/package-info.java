/**
 * Access to courses that was taken, in the journal.
 *
 * <p>In: who takes it, why, until when. Out: whether it is good; the list. Must not know: who may
 * take it.
 */
@NullMarked
package rungwise.store.access;

import org.jspecify.annotations.NullMarked;
