/**
 * Pages for a fit of the response model to the clinic's own courses: choose, watch, look, sign.
 *
 * <p>In: requests of the programme lead. Out: what was chosen, how far it is, what came out and
 * what speaks against it. Must not know: how a fit works.
 */
@NullMarked
package rungwise.web.fitting;

import org.jspecify.annotations.NullMarked;
