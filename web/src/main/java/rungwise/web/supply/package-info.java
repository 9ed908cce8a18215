/**
 * The page of a man's vials: the label against the order, dates, addenda.
 *
 * <p>In: forms. Out: facts of the course, or the page again with every fault. Must not know: when a
 * vial may be used.
 */
@NullMarked
package rungwise.web.supply;

import org.jspecify.annotations.NullMarked;
