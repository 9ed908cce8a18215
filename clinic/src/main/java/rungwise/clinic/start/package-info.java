/**
 * Opens a course: who he is, why he needs the therapy, with what it starts.
 *
 * <p>In: a form. Out: the first facts of a course, or all faults. Must not know: databases,
 * screens.
 */
@NullMarked
package rungwise.clinic.start;

import org.jspecify.annotations.NullMarked;
