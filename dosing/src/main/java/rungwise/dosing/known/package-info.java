/**
 * What is known before any patient: preparations, syringes, tolerances, protocols.
 *
 * <p>In: published facts and the clinic's own records. Out: exact contents, marks and error
 * budgets. Must not know: patients.
 */
@NullMarked
package rungwise.dosing.known;

import org.jspecify.annotations.NullMarked;
