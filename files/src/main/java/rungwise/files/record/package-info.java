/**
 * The record as one JSON file, written and read an entry at a time.
 *
 * <p>In: entries, or a file. Out: a file, or entries. Must not know: what an entry means,
 * databases.
 */
@NullMarked
package rungwise.files.record;

import org.jspecify.annotations.NullMarked;
