/**
 * The call about an erection that does not go down, in a real browser.
 *
 * <p>In: a server that may be gone, clocks that may be wrong. Out: what stands on the screen, and
 * how many answers it took. Must not know: how the pages are made.
 */
@NullMarked
package rungwise.checks.call;

import org.jspecify.annotations.NullMarked;
