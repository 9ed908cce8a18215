/**
 * How the vials of a course were kept.
 *
 * <p>In: the facts of a course. Out: whether a vial waits to be judged or is gone, and since when
 * it may be weaker. Must not know: pages, who may write, what a vial's dates say.
 */
@NullMarked
package rungwise.clinic.keeping;

import org.jspecify.annotations.NullMarked;
