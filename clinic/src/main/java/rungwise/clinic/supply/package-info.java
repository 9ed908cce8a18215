/**
 * The vials that were dispensed to a man.
 *
 * <p>In: typed labels. Out: facts of the course. Must not know: what a clinic has in its cupboard.
 */
@NullMarked
package rungwise.clinic.supply;

import org.jspecify.annotations.NullMarked;
