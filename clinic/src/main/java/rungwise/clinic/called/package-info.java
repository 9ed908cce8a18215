/**
 * Calls about a long erection and the rescues in them, as a course has them.
 *
 * <p>In: the entries of a course. Out: which calls are open or hold, and what was given in them.
 * Must not know: what follows for a dose.
 */
@NullMarked
package rungwise.clinic.called;

import org.jspecify.annotations.NullMarked;
