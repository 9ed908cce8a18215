/**
 * What browsers and people say of the time.
 *
 * <p>In: what a browser's clock says, what a person reads on another clock. Out: the page that asks
 * for it. Must not know: what is believed because of it.
 */
@NullMarked
package rungwise.web.clock;

import org.jspecify.annotations.NullMarked;
