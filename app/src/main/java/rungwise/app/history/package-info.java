/**
 * Where a verb's history comes from.
 *
 * <p>In: a path as it was typed, or "-". Out: what the history holds, or every fault with its line.
 * Must not know: what is made from it.
 */
@NullMarked
package rungwise.app.history;

import org.jspecify.annotations.NullMarked;
