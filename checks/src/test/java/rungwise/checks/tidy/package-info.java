/**
 * How sources and texts are written: sizes, names, words.
 *
 * <p>In: the files of the repository. Out: a failure that names file and line. Must not know: what
 * the code does.
 */
@NullMarked
package rungwise.checks.tidy;

import org.jspecify.annotations.NullMarked;
