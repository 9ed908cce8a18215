/**
 * Integrals over one unknown, and the functions that they need; everything is dimensionless.
 *
 * <p>In: a density known up to a factor. Out: nodes with weights. Must not know: doses, patients,
 * what an integral is for.
 */
@NullMarked
package rungwise.inference;

import org.jspecify.annotations.NullMarked;
