/**
 * The right to one course on pages: taking it with a reason, and reading who took it.
 *
 * <p>In: requests for a course, written reasons. Out: the request let through, or a page that asks.
 * Must not know: what a course page shows.
 */
@NullMarked
package rungwise.web.right;

import org.jspecify.annotations.NullMarked;
