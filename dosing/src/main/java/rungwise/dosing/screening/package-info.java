/**
 * What is asked before a man is treated, and what each answer means for a preparation.
 *
 * <p>In: answers with their dates. Out: findings, a cardiac class, a score's band. Must not know:
 * doses, schedules.
 */
@NullMarked
package rungwise.dosing.screening;

import org.jspecify.annotations.NullMarked;
