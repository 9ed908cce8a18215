/**
 * The page of other courses of the same man.
 *
 * <p>In: forms. Out: what the use cases say. Must not know: what a joined course stops.
 */
@NullMarked
package rungwise.web.joining;

import org.jspecify.annotations.NullMarked;
