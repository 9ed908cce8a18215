/**
 * What can be drawn: syringes, their lines, how exactly they measure.
 *
 * <p>In: published tables of syringes. Out: marks, doses on them, error budgets. Must not know:
 * patients.
 */
@NullMarked
package rungwise.dosing.syringe;

import org.jspecify.annotations.NullMarked;
