/**
 * Injections in the clinic: observation, the board of everybody under it, the end of the day.
 *
 * <p>In: typed times and what was seen. Out: facts of the course, lines of a board. Must not know:
 * how it is shown.
 */
@NullMarked
package rungwise.clinic.room;

import org.jspecify.annotations.NullMarked;
