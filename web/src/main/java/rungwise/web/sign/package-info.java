/**
 * The shapes that stand before a word on every page.
 *
 * <p>In: an answer. Out: the name of a shape. Must not know: any page.
 */
@NullMarked
package rungwise.web.sign;

import org.jspecify.annotations.NullMarked;
