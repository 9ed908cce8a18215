/**
 * The populations of the response model that a clinic has signed, each for preparations of its own.
 *
 * <p>In: documents, and who signs them. Out: for each preparation the way in which a dose is
 * chosen. Must not know: courses, how a document is written.
 */
@NullMarked
package rungwise.clinic.populations;

import org.jspecify.annotations.NullMarked;
