/**
 * Who may open which course: those who treat always, those who stand by when they say why.
 *
 * <p>In: an account, a course, a written reason. Out: whether it is open; a list of what was taken.
 * Must not know: what a course says.
 */
@NullMarked
package rungwise.clinic.access;

import org.jspecify.annotations.NullMarked;
