/**
 * A process that writes and is killed.
 *
 * <p>In: a folder and a moment. Out: whether everything that was acknowledged is there. Must not
 * know: what a fact means.
 */
@NullMarked
package rungwise.store.kill;

import org.jspecify.annotations.NullMarked;
