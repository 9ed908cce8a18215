/**
 * Rules that can only forbid. All are asked and all answers are kept.
 *
 * <p>In: a case and a dose or an instant. Out: verdicts with reasons and, where there is one, when
 * each clears. Must not know: which dose would be best.
 */
@NullMarked
package rungwise.dosing.guard;

import org.jspecify.annotations.NullMarked;
