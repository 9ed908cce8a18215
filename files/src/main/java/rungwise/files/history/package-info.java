/**
 * Reads the history of injections from a table of comma-separated values.
 *
 * <p>In: a file. Out: one checked record a line, or every fault with its line. Must not know: what
 * is done with a history.
 */
@NullMarked
package rungwise.files.history;

import org.jspecify.annotations.NullMarked;
