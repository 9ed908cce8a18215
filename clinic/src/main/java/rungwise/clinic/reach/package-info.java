/**
 * How a man is reached: his numbers, when they may be called, what may be said to whom.
 *
 * <p>In: text that was read. Out: values that say what he asked for. Must not know: courses, the
 * clock, pages.
 */
@NullMarked
package rungwise.clinic.reach;

import org.jspecify.annotations.NullMarked;
