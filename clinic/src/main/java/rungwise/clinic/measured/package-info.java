/**
 * What is measured of a man and stands in facts.
 *
 * <p>In: numbers as typed. Out: values that a person can have. Must not know: the facts in which
 * they stand.
 */
@NullMarked
package rungwise.clinic.measured;

import org.jspecify.annotations.NullMarked;
