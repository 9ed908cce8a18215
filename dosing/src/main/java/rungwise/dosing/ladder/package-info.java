/**
 * Volumes that can really be drawn, and how far one step may go.
 *
 * <p>In: protocol, preparation, syringe, group. Out: the rungs in order. Must not know: the
 * patient's history.
 */
@NullMarked
package rungwise.dosing.ladder;

import org.jspecify.annotations.NullMarked;
