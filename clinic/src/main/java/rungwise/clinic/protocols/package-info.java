/**
 * The clinic's signed titration protocols.
 *
 * <p>In: documents. Out: versions that a course may run on. Must not know: how a document is
 * written.
 */
@NullMarked
package rungwise.clinic.protocols;

import org.jspecify.annotations.NullMarked;
