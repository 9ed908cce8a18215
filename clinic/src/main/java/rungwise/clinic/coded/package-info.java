/**
 * Answers that are chosen from a list and stand in facts, each with its words.
 *
 * <p>In and out: enums. Must not know: the facts in which they stand.
 */
@NullMarked
package rungwise.clinic.coded;

import org.jspecify.annotations.NullMarked;
