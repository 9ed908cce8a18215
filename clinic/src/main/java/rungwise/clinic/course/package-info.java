/**
 * The record of one man's therapy: facts that are appended and never changed.
 *
 * <p>In: facts with who and when. Out: the question that the engine answers. Must not know:
 * databases, screens.
 */
@NullMarked
package rungwise.clinic.course;

import org.jspecify.annotations.NullMarked;
