/**
 * Reads and writes the files that people exchange with the clinic: protocols now.
 *
 * <p>In: text. Out: checked values, or every fault with its place in the file. Must not know:
 * databases, screens.
 */
@NullMarked
package rungwise.files;

import org.jspecify.annotations.NullMarked;
