/**
 * Pages that open a course.
 *
 * <p>In: a form. Out: a course, or the form again with every fault. Must not know: how a first dose
 * is found.
 */
@NullMarked
package rungwise.web.start;

import org.jspecify.annotations.NullMarked;
