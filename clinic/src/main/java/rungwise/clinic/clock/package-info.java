/**
 * What is believed of the clock by which everything here lives.
 *
 * <p>In: the clock, the steady count of the processor, what other clocks say, what a person says.
 * Out: whether it is known what time it is, with reasons. Must not know: courses, pages, networks.
 */
@NullMarked
package rungwise.clinic.clock;

import org.jspecify.annotations.NullMarked;
