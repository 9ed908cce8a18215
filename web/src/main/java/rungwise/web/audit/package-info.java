/**
 * Who has seen a course, for those who watch over the records.
 *
 * <p>In: a course's id, and which part of the list. Out: pages. Must not know: what a course says
 * beyond whose it is.
 */
@NullMarked
package rungwise.web.audit;

import org.jspecify.annotations.NullMarked;
