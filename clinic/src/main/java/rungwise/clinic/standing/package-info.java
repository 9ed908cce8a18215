/**
 * Where a course stands: its record read, asked and changed.
 *
 * <p>In: entries and ports. Out: the state of a course; changes in one transaction. Must not know:
 * screens.
 */
@NullMarked
package rungwise.clinic.standing;

import org.jspecify.annotations.NullMarked;
