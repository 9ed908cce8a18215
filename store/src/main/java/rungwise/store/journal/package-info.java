/**
 * The chain of everything that happened: appended, sealed, checked, never changed.
 *
 * <p>In: an entry with the rows that say what happened. Out: its id; the first broken entry. Must
 * not know: what a fact means. A fact table is any table with the column entry_id.
 */
@NullMarked
package rungwise.store.journal;

import org.jspecify.annotations.NullMarked;
