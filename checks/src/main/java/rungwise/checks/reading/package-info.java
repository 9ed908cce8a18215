/**
 * How easily a text is read, by published formulas.
 *
 * <p>In: sentences. Out: counts and scores. Must not know: what a text is about.
 */
@NullMarked
package rungwise.checks.reading;

import org.jspecify.annotations.NullMarked;
