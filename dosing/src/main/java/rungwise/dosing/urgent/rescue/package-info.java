/**
 * The arithmetic of the rescue with phenylephrine, for the clinician who treats: exact, and nothing
 * is rounded.
 *
 * <p>In: what was typed of a stock, a wanted strength, doses and a blood gas. Out: steps, volumes,
 * verdicts, and refusals with their reasons. Must not know: who he is, what time it is.
 */
@NullMarked
package rungwise.dosing.urgent.rescue;

import org.jspecify.annotations.NullMarked;
