/**
 * Picks among what the guards and the ladder leave.
 *
 * <p>In: the case. Out: one decision with every rule that spoke. Must not know: how the guards
 * decide.
 */
@NullMarked
package rungwise.dosing.choice;

import org.jspecify.annotations.NullMarked;
