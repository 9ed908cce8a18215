/**
 * Reads and writes the files that people exchange with the clinic: protocols; histories in a
 * package of their own.
 *
 * <p>In: text. Out: checked values, or every fault with its place in the file. Must not know:
 * databases, screens.
 */
@NullMarked
package rungwise.files;

import org.jspecify.annotations.NullMarked;
