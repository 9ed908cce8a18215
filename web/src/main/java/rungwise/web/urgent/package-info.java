/**
 * The page on which phenylephrine is prepared by the clinician who treats, with nobody's record
 * opened.
 *
 * <p>In: what was typed of a stock, a wanted strength, a dose and a blood gas. Out: steps, volumes,
 * a label, or each refusal at its field. Must not know: who he is; how any of it is reckoned.
 */
@NullMarked
package rungwise.web.urgent;

import org.jspecify.annotations.NullMarked;
