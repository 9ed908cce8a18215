/**
 * The page of a man who is taken over from another clinic.
 *
 * <p>In: forms. Out: what the use cases say. Must not know: how a dose is chosen.
 */
@NullMarked
package rungwise.web.takeover;

import org.jspecify.annotations.NullMarked;
