/**
 * Fits of the response model to the clinic's own courses, from the choice of courses to a document
 * that can be signed.
 *
 * <p>In: courses and histories of the record, and who asks. Out: a fit with what to doubt of it, or
 * nothing at all where it was stopped. Must not know: how a document is written, how a page shows
 * it.
 */
@NullMarked
package rungwise.clinic.fitting;

import org.jspecify.annotations.NullMarked;
