/**
 * A clinic's signed titration rules.
 *
 * <p>In: what a document of the clinic says. Out: amounts, steps and limits with sources. Must not
 * know: patients.
 */
@NullMarked
package rungwise.dosing.protocol;

import org.jspecify.annotations.NullMarked;
