/**
 * The whole record, or one course of it, as entries that can be carried to another store.
 *
 * <p>In: entries with who, when, on whose behalf. Out: the same entries, sealed anew. Must not
 * know: how a file is written, SQL.
 */
@NullMarked
package rungwise.clinic.record;

import org.jspecify.annotations.NullMarked;
