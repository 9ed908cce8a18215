/** The pages of a course beside the course page: injections, plan with its reasons, whole record. */
@NullMarked
package rungwise.web.beside;

import org.jspecify.annotations.NullMarked;
