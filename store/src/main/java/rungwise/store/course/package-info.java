/**
 * Courses in the journal: a fact is an entry with a row in its own table.
 *
 * <p>In: facts that the use cases have checked. Out: whole courses, in the order of their entries.
 * Must not know: what a fact means for the next dose.
 */
@NullMarked
package rungwise.store.course;

import org.jspecify.annotations.NullMarked;
