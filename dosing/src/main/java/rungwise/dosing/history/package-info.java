/**
 * What happened: injections, how they went, what a prescriber reopened.
 *
 * <p>In: checked records. Out: an ordered history that answers what may have happened. Must not
 * know: what to do about it.
 */
@NullMarked
package rungwise.dosing.history;

import org.jspecify.annotations.NullMarked;
