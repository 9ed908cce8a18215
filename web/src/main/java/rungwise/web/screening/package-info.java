/**
 * The page of a man's screening: questions, decisions, baseline, examination.
 *
 * <p>In: forms. Out: facts of the course, or the page again with every fault. Must not know: what a
 * condition means.
 */
@NullMarked
package rungwise.web.screening;

import org.jspecify.annotations.NullMarked;
