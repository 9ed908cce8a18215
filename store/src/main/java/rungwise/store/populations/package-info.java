/**
 * The signed populations in the journal.
 *
 * <p>In: signatures and withdrawals. Out: the same, as they were written. Must not know: what a
 * document says.
 */
@NullMarked
package rungwise.store.populations;

import org.jspecify.annotations.NullMarked;
