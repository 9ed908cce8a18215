/**
 * An erection that does not go down: how long it has lasted, and the arithmetic of its rescue.
 *
 * <p>In: what people say of its start, a stock strength, doses that were given, a blood gas. Out:
 * times, steps of a dilution, volumes, verdicts, refusals. Must not know: who he is, what time it
 * is, which dose he is ordered.
 */
@NullMarked
package rungwise.dosing.urgent;

import org.jspecify.annotations.NullMarked;
