/**
 * The day's list as it is kept: one row for each course, made anew when it no longer holds, and the
 * words by which a man is found.
 *
 * <p>In: courses, and the instant. Out: rows, the most urgent first. Must not know: pages, how rows
 * are stored. Nothing is decided here that {@code clinic.day} has not decided.
 */
@NullMarked
package rungwise.clinic.today;

import org.jspecify.annotations.NullMarked;
