/**
 * The second factor on pages: setting it up, giving it once a shift, losing it.
 *
 * <p>In: codes as typed, answers of passkeys. Out: a request let through, or a page that asks. Must
 * not know: what the page behind does.
 */
@NullMarked
package rungwise.web.factor;

import org.jspecify.annotations.NullMarked;
