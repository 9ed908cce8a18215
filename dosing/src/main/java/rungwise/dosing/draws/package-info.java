/**
 * What a fit knows of its parameters together.
 *
 * <p>In: draws with their weights, or a matrix. Out: means, quantiles, covariances by name. Must
 * not know: what the parameters mean.
 */
@NullMarked
package rungwise.dosing.draws;

import org.jspecify.annotations.NullMarked;
