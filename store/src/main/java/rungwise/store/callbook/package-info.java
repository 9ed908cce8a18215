/**
 * What the clinic keeps for calls, in the journal.
 *
 * <p>In and out: the clinic's words. Must not know: any man.
 */
@NullMarked
package rungwise.store.callbook;

import org.jspecify.annotations.NullMarked;
