/**
 * The kept rows of the day's list and the words by which men are found.
 *
 * <p>In and out: rows with a keyed check. Must not know: what a row means.
 */
@NullMarked
package rungwise.store.day;

import org.jspecify.annotations.NullMarked;
