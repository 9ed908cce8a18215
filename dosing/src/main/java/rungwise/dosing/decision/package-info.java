/**
 * What the engine may say: start, step up, repeat, step down, pause, stop or refer.
 *
 * <p>In: a choice. Out: advice, unsigned. Must not know: how it is shown or stored.
 */
@NullMarked
package rungwise.dosing.decision;

import org.jspecify.annotations.NullMarked;
