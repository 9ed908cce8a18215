/**
 * Pausing, ending and opening a course again.
 *
 * <p>In: what somebody typed. Out: entries of the course, or every fault at once. Must not know:
 * pages, how a dose is chosen.
 */
@NullMarked
package rungwise.clinic.running;

import org.jspecify.annotations.NullMarked;
