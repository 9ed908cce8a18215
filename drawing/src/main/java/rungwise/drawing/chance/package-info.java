/**
 * Draws what volumes may do, and how that moved, with the strokes of the other drawings.
 *
 * <p>In: chances and volumes. Out: SVG and the words that say the same. Must not know: the model
 * that the chances come from.
 */
@NullMarked
package rungwise.drawing.chance;

import org.jspecify.annotations.NullMarked;
