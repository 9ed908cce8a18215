/**
 * The page that answers which line on which syringe.
 *
 * <p>In: a preparation, a syringe, and a volume, a line or a content. Out: the dose, loudest on the
 * page, or why it cannot be drawn. Must not know: how any of it is worked out.
 */
@NullMarked
package rungwise.web.dose;

import org.jspecify.annotations.NullMarked;
