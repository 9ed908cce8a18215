/**
 * Keeps everything in one data folder: an embedded database and the key of its journal.
 *
 * <p>In: the folder. Out: the adapters of the clinic's ports. Must not know: what a record means.
 */
@NullMarked
package rungwise.store;

import org.jspecify.annotations.NullMarked;
