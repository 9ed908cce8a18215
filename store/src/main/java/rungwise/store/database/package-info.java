/**
 * The database file: who may open it, how it is read and written, how its tables came to be.
 *
 * <p>In: a data folder. Out: transactions, and a query builder inside and outside of them. Must not
 * know: any feature.
 */
@NullMarked
package rungwise.store.database;

import org.jspecify.annotations.NullMarked;
