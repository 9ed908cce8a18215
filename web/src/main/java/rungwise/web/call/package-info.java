/**
 * The page of a call about an erection that does not go down.
 *
 * <p>In: when it began, and whether it is still firm. Out: the action first, then whom to call,
 * then why. Must not know: of a man who is not opened, anything at all.
 */
@NullMarked
package rungwise.web.call;

import org.jspecify.annotations.NullMarked;
