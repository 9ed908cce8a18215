/**
 * Who needs somebody today: how urgent it is, since when, and whether he may inject now.
 *
 * <p>In: the state of a course and what the engine said of it. Out: tokens, volumes and instants.
 * Must not know: words of a sentence, pages, clocks.
 */
@NullMarked
package rungwise.clinic.day;

import org.jspecify.annotations.NullMarked;
