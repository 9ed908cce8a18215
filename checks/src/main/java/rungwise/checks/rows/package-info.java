/**
 * Reads reference rows and judges the product's answers by them.
 *
 * <p>In: a file of rows. Out: an outcome for each row, and one closing line. Must not know: how an
 * answer is made.
 */
@NullMarked
package rungwise.checks.rows;

import org.jspecify.annotations.NullMarked;
