/**
 * Exact amounts: volume, mass, concentration and time.
 *
 * <p>In: what a person typed, or a whole count of the smallest unit. Out: values that add up
 * exactly and print themselves safely. Knows nothing of medicine, syringes, clocks or screens.
 */
@NullMarked
package rungwise.quantities;

import org.jspecify.annotations.NullMarked;
