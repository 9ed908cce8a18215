/**
 * The page of how a man is reached, and the taps after a call that did not reach him.
 *
 * <p>In: forms. Out: entries of the course, or the page again with every fault. Must not know: when
 * the next try is due.
 */
@NullMarked
package rungwise.web.reach;

import org.jspecify.annotations.NullMarked;
