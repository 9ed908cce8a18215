/**
 * Holds a fitted response model against the reports that it was fitted to.
 *
 * <p>In: courses and parameters drawn from their posterior. Out: what was reported beside what the
 * model would have foreseen. Must not know: threads, files, what is made of a disagreement.
 */
@NullMarked
package rungwise.dosing.predictive;

import org.jspecify.annotations.NullMarked;
