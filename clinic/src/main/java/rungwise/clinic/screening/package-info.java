/**
 * What a man is asked before treatment, and what a prescriber decides on it.
 *
 * <p>In: typed answers. Out: facts of the course. Must not know: the next dose.
 */
@NullMarked
package rungwise.clinic.screening;

import org.jspecify.annotations.NullMarked;
