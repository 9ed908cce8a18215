/**
 * The pages of a course beside the course page: its injections, its plan with the reasons of the
 * advice, its whole record.
 *
 * <p>In: forms. Out: what the use cases say. Must not know: what may be injected now.
 */
@NullMarked
package rungwise.web.beside;

import org.jspecify.annotations.NullMarked;
