/**
 * Answers the questions of the reference rows with the product's public code.
 *
 * <p>In: a topic and its named inputs. Out: an answer, or why there is none yet. Must not know:
 * what the row expects, nor how the product works inside.
 */
@NullMarked
package rungwise.checks.topics;

import org.jspecify.annotations.NullMarked;
