/**
 * Joins two courses of one man, and parts them again.
 *
 * <p>In: the ids of two courses and a reason. Out: entries of both. Must not know: screens, how
 * they are kept.
 */
@NullMarked
package rungwise.clinic.joining;

import org.jspecify.annotations.NullMarked;
