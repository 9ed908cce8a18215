/**
 * The pages as a real browser shows them, on a real server with a folder of its own.
 *
 * <p>In: nothing but the program. Out: screenshots, and a failure for whatever a person could not
 * see, reach or read. Must not know: how any page is made.
 */
@NullMarked
package rungwise.checks.browser;

import org.jspecify.annotations.NullMarked;
