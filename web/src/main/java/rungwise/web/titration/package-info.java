/**
 * The course page and its forms: report, signature, and what a prescriber writes.
 *
 * <p>In: a course. Out: pages that answer: may he, what next, why. Must not know: how advice is
 * found.
 */
@NullMarked
package rungwise.web.titration;

import org.jspecify.annotations.NullMarked;
