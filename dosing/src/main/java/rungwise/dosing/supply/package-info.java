/**
 * What becomes of a vial: until when it may be used, and how fresh it is.
 *
 * <p>In: its dates, and how long its preparation may be used once opened. Out: until when it may be
 * used and what ends it, its freshness. Must not know: who it is for.
 */
@NullMarked
package rungwise.dosing.supply;

import org.jspecify.annotations.NullMarked;
