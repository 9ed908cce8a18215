/**
 * Fits the response model to the courses of a clinic.
 *
 * <p>In: what was given to many men and what followed. Out: population parameters, how sure they
 * are, and what speaks against using them. Must not know: files, threads, what a fit is used for.
 */
@NullMarked
package rungwise.dosing.fit;

import org.jspecify.annotations.NullMarked;
