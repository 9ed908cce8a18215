/**
 * What becomes of a vial: until when it may be used, and how fresh it is.
 *
 * <p>In: its dates. Out: the last day of use, its freshness. Must not know: who it is for.
 */
@NullMarked
package rungwise.dosing.supply;

import org.jspecify.annotations.NullMarked;
