/**
 * Rescues in words.
 *
 * <p>In: the log of a rescue. Out: lines, flags and what holds, as people read them. Must not know:
 * the pages that show them.
 */
@NullMarked
package rungwise.clinic.rescuing;

import org.jspecify.annotations.NullMarked;
