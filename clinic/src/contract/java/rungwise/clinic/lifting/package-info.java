/** What stops a course and what lifts it, on every store. */
@NullMarked
package rungwise.clinic.lifting;

import org.jspecify.annotations.NullMarked;
