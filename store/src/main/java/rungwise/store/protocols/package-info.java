/**
 * Signed protocols in the journal.
 *
 * <p>In: signed documents. Out: the same documents, with who signed them and when. Must not know:
 * what a document says.
 */
@NullMarked
package rungwise.store.protocols;

import org.jspecify.annotations.NullMarked;
