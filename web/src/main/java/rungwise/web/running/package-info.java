/**
 * The page of whether a man's treatment goes on.
 *
 * <p>In: forms. Out: what the use cases say. Must not know: how a dose is chosen.
 */
@NullMarked
package rungwise.web.running;

import org.jspecify.annotations.NullMarked;
