/**
 * Who has looked at whom: every page that names a man is on record before it is shown.
 *
 * <p>In: who is about to see which courses on which screen. Out: entries of the journal; who has
 * seen a course. Must not know: what a page shows of a course.
 */
@NullMarked
package rungwise.clinic.audit;

import org.jspecify.annotations.NullMarked;
