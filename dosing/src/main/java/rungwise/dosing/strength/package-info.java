/**
 * What time and warmth take from the strength of a vial, where somebody has measured it.
 *
 * <p>In: days and degrees, published measurements. Out: rates, and a range of percent of the label
 * or that nobody has measured it. Must not know: a vial, a dose. A figure from here is a reason to
 * throw away or to ask, and never to give more.
 */
@NullMarked
package rungwise.dosing.strength;

import org.jspecify.annotations.NullMarked;
